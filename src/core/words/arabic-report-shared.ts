// What both parts of a report say in Arabic.
import { arabicReportJob } from './arabic-report-job.js';
import { arabicLater } from './arabic-report-later.js';
import { say } from './report-phrase.js';
import type { SharedWords } from './report-words.js';

const months = [
  'يناير',
  'فبراير',
  'مارس',
  'أبريل',
  'مايو',
  'يونيو',
  'يوليو',
  'أغسطس',
  'سبتمبر',
  'أكتوبر',
  'نوفمبر',
  'ديسمبر',
] as const;

export const arabicShared: SharedWords = {
  language: 'ar',
  direction: 'rtl',
  comma: '، ',
  job: arabicReportJob,
  later: arabicLater,
  arrow: ' ← ',
  more: (n) => `و${n} غيرها`,
  verdict: {
    normal: 'طبيعي',
    low: 'منخفض',
    high: 'مرتفع',
    short: 'قصر',
    open: 'مفتوح',
    unsure: 'غير محسوم',
    wobble: 'غير مستقر',
    unread: 'لم يُقرأ',
  },
  measure: {
    resistance: 'المقاومة إلى الأرضي',
    diode: 'هبوط الجهد في فحص الدايود',
    continuity: 'الاتصال بالأرضي',
    'dc-volts': 'الجهد المستمر',
  },
  polarity: {
    'red-walks': 'المجس الأحمر يتنقل والأسود على الأرضي',
    'black-walks': 'المجس الأسود يتنقل والأحمر على الأرضي',
  },
  overload: 'خارج المدى',
  place: (where, id) => {
    switch (where) {
      case 'joint':
        return say`نقطة اللحام ${id}`;
      case 'part':
        return say`القطعة ${id}`;
      case 'chip':
        return say`الشريحة ${id}`;
    }
  },
  lead: { 'ground-clip': 'مشبك الأرضي', 'walking-lead': 'سلك المجس' },
  day: ({ year, month, day }) => `${day} ${months[month - 1] ?? month} ${year}`,
  atMost: (limit) => say`${limit} على الأكثر`,
  between: (low, high) => say`من ${low} إلى ${high}`,
};
