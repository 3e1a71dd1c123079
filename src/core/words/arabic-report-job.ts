// The job around the walk, in a report in Arabic.
import { say } from './report-phrase.js';
import type { JobReportWords } from './report-words-job.js';

export const arabicReportJob: JobReportWords = {
  title: 'الاستلام',
  broughtTitle: 'ما الذي سُلِّم إلينا',
  field: {
    ticket: 'رقم الطلب',
    device: 'الجهاز',
    symptom: 'العَرَض المبلَّغ عنه',
    history: 'ما سبق',
    seen: 'ما شوهد تحت المجهر',
    dataMatters: 'البيانات',
  },
  dataMatters: {
    yes: 'سُجّل عند الاستلام أن البيانات على الجهاز تهمك.',
    no: 'سُجّل عند الاستلام أن البيانات على الجهاز لا تهمك.',
    unknown: 'لم يتضح عند الاستلام هل البيانات على الجهاز تهمك.',
  },
  data: {
    yes: 'تهم صاحب الجهاز',
    no: 'لا تهم صاحب الجهاز',
    unknown: 'لم يتضح هل تهمه',
  },
  cautions: {
    title: 'احتياطات أُكِّدت',
    by: { keyboard: 'بلوحة المفاتيح', option: 'بخيار في سطر الأوامر' },
    none: 'لم يُؤكَّد أي منها في هذه الجلسة.',
  },
  residual: {
    title: 'الجهد المتبقي قبل القراءة الأولى',
    at: 'الوقت',
    where: 'الخط',
    input: 'مدخل التغذية',
    volts: 'الجهد',
    says: 'المعنى',
    discharged: (limit) => say`مُفرَّغ (${limit} فأقل)`,
    charged: (limit) => say`مشحون (أكثر من ${limit})`,
    by: { meter: 'من جهاز القياس', typed: 'أُدخل يدويًا' },
    skipped: (reason) => say`لم يُقس: ${reason}`,
    none: 'لم يُقس.',
  },
  photos: { title: 'الصور', file: 'الملف', hash: 'SHA-256', size: 'البايتات' },
  triage: {
    title: 'الفرز الأولي',
    observation: 'الملاحظة',
    answer: 'الجواب',
    says: { yes: 'نعم', no: 'لا', unknown: 'لم تُفحص' },
    likely: 'الأرجح',
    other: 'شيء لا يذكره ملف الموصل',
    walkFirst: 'يُقاس أولًا',
    leaveAlone: 'يُترك',
    nothing: 'لا شيء',
    how: 'رُجّح وفق جدول الأعراض في ملف الموصل: كم مرة ترافق كل ملاحظة كل عَرَض. وهو اقتراح لا حكم.',
  },
};
