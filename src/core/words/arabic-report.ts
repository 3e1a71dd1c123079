// The first page of a report in Arabic. Figures are written with the digits a meter shows.
import { arabicCount } from './arabic-count.js';
import { arabicShared as shared } from './arabic-report-shared.js';
import { arabicTechnical } from './arabic-report-technical.js';
import { say } from './report-phrase.js';
import type { ReportWords } from './report-words.js';

const pins = {
  one: 'طرف واحد',
  two: 'طرفين',
  few: 'أطراف',
  many: 'طرفًا',
  other: 'طرف',
};

const measured = {
  resistance: 'المقاومة بين كل طرف والأرضي',
  diode: 'هبوط الجهد بين كل طرف والأرضي عند تيار اختبار صغير (فحص الدايود)',
  continuity: 'هل كل طرف متصل بالأرضي',
  'dc-volts': 'الجهد المستمر بين كل طرف والأرضي',
} as const;

export const arabicReport: ReportWords = {
  shared,
  owner: {
    title: 'تقرير التسليم',
    connector: (id, title) => (title === null ? say`الموصل ${id}` : say`الموصل ${id}: ${title}`),
    when: (span) => {
      if (span === null) return 'لم يُسجَّل تاريخ.';
      const { day, from, lastDay, to, zone } = span;
      const end = lastDay === null ? say`${to}` : say`${to} يوم ${lastDay}`;
      const place = zone === null ? '' : say` (${zone})`;
      return say`جرى القياس يوم ${day} من ${from} إلى ${end}${place}`;
    },
    simulated: {
      title: 'قراءات محاكاة.',
      text: 'مصدرها طاولة افتراضية للتدريب وليس جهاز قياس. لم يُقَس أي جهاز، ولا تثبت هذه الصفحة شيئًا عن أي جهاز.',
    },
    demo: {
      title: 'ملف موصل مُختلق.',
      text: 'الموصل وقيمه المتوقعة بيانات تجريبية لا تخص أي لوحة حقيقية.',
    },
    recorded: {
      title: 'من تسجيل.',
      text: 'أُخذت القراءات من سجل قراءات محفوظ. متى أُخذت وعلى أي جهاز ليس جزءًا من هذا السجل.',
    },
    redacted: (of) => ({
      title: 'من دون بيانات العميل.',
      text: say`حُذفت من هذا السجل قبل تسليمه: رقم الطلب والجهاز والعطل المذكور وتاريخه والملاحظات والصور وأسماء الملفات. أما القياسات والنتائج فكاملة. بصمة السجل الكامل ${of}.`,
    }),
    unfinished: (left, total) => ({
      title: 'لم يكتمل القياس.',
      text: `عند إعداد هذا التقرير لم يُقَس بعد ${left} من أصل ${arabicCount(total, pins)}.`,
    }),
    headline: {
      faults: (n, total) =>
        `القراءة غير مطابقة للوحة سليمة عند ${n} من أصل ${arabicCount(total, pins)}.`,
      unclear: (n, total) =>
        `لا يوجد طرف خاطئ بوضوح، لكن تعذّر الحسم عند ${n} من أصل ${arabicCount(total, pins)}.`,
      partly: (read, left) =>
        `قيس ${read} من أصل ${arabicCount(read + left, pins)} ولم يظهر فيها خطأ؛ ولم يُقَس ${left}.`,
      allNormal: (total) =>
        `لم يظهر خطأ عند قياس ${arabicCount(total, pins)}، كما يُرى من هذا الموصل.`,
      nothing: 'لم يُقَس شيء بعد.',
    },
    tally: (counts) => counts.map(([word, n]) => `${shared.verdict[word]}: ${n}`).join('، '),
    failed: {
      title: 'ما العطل',
      fault: (pin, line, fault) => {
        switch (fault) {
          case 'open':
            return say`الطرف ${pin}، ${line}: لا يوجد اتصال حيث يوجد في اللوحة السليمة.`;
          case 'open-unknown':
            return say`الطرف ${pin}، ${line}: لا يوجد اتصال.`;
          case 'short':
            return say`الطرف ${pin}، ${line}: متصل بالأرضي مباشرة تقريبًا.`;
          case 'low':
            return say`الطرف ${pin}، ${line}: القراءة أقل مما في اللوحة السليمة؛ هناك ما يمرّر تيارًا لا ينبغي أن يمر.`;
          case 'high':
            return say`الطرف ${pin}، ${line}: القراءة أعلى مما في اللوحة السليمة؛ قد يكون جزء من المسار مقطوعًا.`;
          case 'unexpected':
            return say`الطرف ${pin}، ${line}: يوجد اتصال حيث لا يوجد في اللوحة السليمة.`;
        }
      },
      read: (value, good) =>
        good === null
          ? say`القراءة: ${value}.`
          : say`القراءة: ${value}. في اللوحة السليمة: ${good}.`,
      readNothing: 'لا شيء (خارج المدى)',
      unclear: ({ names }) => say`تعذّر الحسم عند الأطراف: ${names}.`,
      nothingMeasured: 'لم يُقَس شيء، فلا يمكن قول شيء.',
      none: 'لم يظهر خطأ عند الأطراف التي قيست.',
      more: (n) => `بقية النتائج (${n}) في الصفحات الفنية.`,
      likely: (place, probability, at) =>
        at === null
          ? say`الموضع الأرجح للعطل: ${place}، باحتمال ${probability}.`
          : say`الموضع الأرجح للعطل عند الأطراف ${at.names}: ${place}، باحتمال ${probability}.`,
      unplaced: ({ names }) => say`لا تحدد القياسات وحدها موضعًا بعينه عند الأطراف: ${names}.`,
      likelyLead: (lead, probability) =>
        say`قد يكون الجهاز سليمًا: ${lead} في جهاز القياس يفسّر القراءات باحتمال ${probability}.`,
    },
    why: {
      title: 'لماذا نرى ذلك',
      method: (measure) =>
        `للموصل نقاط تماس صغيرة هي أطرافه. لُمست واحدًا بعد آخر بمجس جهاز قياس فأظهر ${measured[measure]}، ثم قورنت القراءات بما تُظهره لوحة سليمة عند الأطراف نفسها.`,
      repeated: 'كل قراءة معيبة أُعيد أخذها فجاءت بالنتيجة نفسها.',
      confirmed: 'وحيث لم يُظهر جهاز القياس شيئًا أكّد الفني أن المجس كان على الطرف.',
      confidence: (least) => say`درجة الثقة في أقل هذه النتائج يقينًا: ${least}.`,
      fromHere:
        'هذا ما يُرى من الموصل: القراءة تدل على أن شيئًا خلف الطرف ليس سليمًا، ولا تدل وحدها على نقطة اللحام أو القطعة المعطلة.',
      pressed: (lines, part, finding) => {
        const pressed = part === null ? 'كلما ضُغط الموضع' : say`كلما ضُغطت القطعة ${part}`;
        switch (finding) {
          case 'loose':
            return say`${pressed} عادت قراءة ${lines}: هناك نقطة لحام مرتخية.`;
          case 'cracked':
            return say`${pressed} ضاعت قراءة ${lines}: هناك نقطة لحام متشققة.`;
          case 'bridged':
            return say`${pressed} تبدّلت قراءة ${lines} بين المعتاد والقصر: هناك جسر غير مقصود.`;
        }
      },
    },
    done: {
      title: 'ما الذي عُمل',
      nothing: 'لم يُسجَّل شيء بعد.',
      measuredOnly:
        'قيست الأطراف. لم تُسجَّل في هذه الجلسة أي أعمال إصلاح؛ وإن وُجدت فليست جزءًا من هذا التقرير.',
      notes: (n) => `كتب الفني ملاحظات (عددها ${n})؛ انظر الصفحات الفنية.`,
    },
    checked: {
      title: 'ما الذي فُحص',
      pins: (read, total, connector, measure) =>
        say`${read} من أصل ${arabicCount(total, pins)} في الموصل ${connector}: ${shared.measure[measure]}.`,
      meter: (meter) => say`جهاز القياس: ${meter}.`,
      typed: 'أُدخلت القراءات يدويًا.',
      groundGood: 'سلك الأرضي: لُمست نقطتا أرضي أولًا وكانت القراءة قراءة أرضي.',
      groundSkipped: 'لم يُفحص سلك الأرضي قبل القياس.',
      presses: (n) => `اختبار الضغط (عدد المرات: ${n}): ضُغط موضع بإيقاع منتظم مع مراقبة القراءة.`,
      sittings: (n) => `استُؤنف العمل بعد توقف (عدد المرات: ${n}).`,
    },
    unchecked: {
      title: 'ما الذي لم يُفحص',
      function: 'هل يعمل الجهاز: لم يُسجَّل اختبار تشغيل.',
      unread: ({ names }) => say`لم تُقَس الأطراف: ${names}.`,
      unclear: ({ names }) => say`غير واضح عند الأطراف: ${names}.`,
      unrepeated: ({ names }) => say`قيست مرة واحدة فقط رغم أنها غير طبيعية: ${names}.`,
      nothingExpected: ({ names }) =>
        say`فُحصت من ناحية القصر فقط لأن قيمتها السليمة غير معروفة: ${names}.`,
      readsNothing: ({ names }) =>
        say`مسارات لا تُظهر شيئًا في اللوحة السليمة أيضًا، فلا يظهر انقطاعها بهذا القياس: ${names}.`,
      behind:
        'نقاط لحام قد يخفيها مسار آخر: القراءة الطبيعية لا تثبت سلامة كل ما خلف الطرف. وكذلك القطع التي لا يصل إليها هذا الموصل.',
    },
    data: {
      title: 'بياناتك',
      text: 'يضم هذا السجل قراءات الأطراف وملاحظات الفني، ولا يضم شيئًا مما هو مخزَّن على الجهاز. أما هل نُسخت بيانات أو مُسحت أثناء العمل فغير مسجَّل هنا.',
    },
    footer: (fingerprint, day) => say`السجل ${fingerprint}. أُعدّ التقرير يوم ${day}.`,
  },
  inDetail: arabicTechnical,
};
