// What a report shows of the findings in Arabic: pins, press tests, suspects.
import { arabicCount } from './arabic-count.js';
import { say } from './report-phrase.js';
import type { EvidenceWords } from './report-words-technical.js';

const readings = {
  one: 'قراءة واحدة',
  two: 'قراءتين',
  few: 'قراءات',
  many: 'قراءة',
  other: 'قراءة',
};

export const arabicEvidence: EvidenceWords = {
  finding: {
    title: 'النتائج',
    none: 'لا يوجد طرف مقيس قراءته غير طبيعية.',
    pin: (pin, line) => say`الطرف ${pin}، ${line}`,
    read: 'القراءة',
    touch: (value, n, at) =>
      n === 0 ? say`${value} عند ${at}` : say`${value} من ${arabicCount(n, readings)} عند ${at}`,
    answered: (at) => say`أجاب الفني بأنه مفتوح عند ${at}`,
    range: (fullScale) => say`المدى ${fullScale}`,
    good: 'اللوحة السليمة',
    confidence: 'الثقة',
    mate: 'الخط القرين',
    mateReads: (line, value, word) => say`${line}: ${value}، ${word}`,
    way: 'من الطرف إلى الداخل',
    shunt: (part) => say`[تفرّع: ${part}]`,
    where: 'الموضع',
    next: 'ما يفيد بعد ذلك',
    advice: {
      'hold-longer': 'إبقاء المجس مدة أطول',
      retake: 'إعادة القراءة',
      'change-range': 'تغيير المدى',
      'change-function': 'تغيير الوظيفة',
      'compare-mate': 'المقارنة بالخط القرين',
      discharge: 'تفريغ الشحنة ثم القياس من جديد',
    },
  },
  confidence: { very: 'عالية جدًا', sure: 'عالية', likely: 'مرجّحة', unsure: 'غير كافية' },
  pins: {
    title: 'كل الأطراف',
    caption: 'كل الأطراف بترتيب القياس',
    pin: 'الطرف',
    line: 'الخط',
    read: 'القراءة',
    scale: 'بين الحدين',
    good: 'اللوحة السليمة',
    verdict: 'الحكم',
    confidence: 'الثقة',
    nothingExpected: 'غير معروف',
    unrepeated: 'لم تؤكده لمسة ثانية',
    touches: (n) => `عدد اللمسات ${n}`,
    kind: { signal: 'إشارة', supply: 'تغذية', ground: 'أرضي', unused: 'غير مستعمل' },
    digits:
      'الأرقام بين القوسين هي عدم اليقين المعياري محسوبًا بخطوات الخانة الأخيرة. ويبيّن الشريط حدّي اللوحة السليمة والقراءة مع ضعف عدم يقينها المعياري.',
  },
  donor: {
    title: 'اللوحة المرجعية بجانب هذه اللوحة',
    caption: 'كل طرف كما قرئ على اللوحة المرجعية ثم على هذه اللوحة مباشرة',
    donor: 'المرجعية',
    patient: 'هذه اللوحة',
    off: 'الفرق',
    explained:
      'قيست اللوحتان بالمقياس نفسه في جولة واحدة، كل طرف على اللوحة المرجعية أولًا. وحيث كانت المرجعية طبيعية صارت قراءتها هي المتوقعة من هذه اللوحة، مع السماح المعتاد وعدم يقين القراءتين. ولوحة مرجعية واحدة تبيّن ما قرئ عليها، لا مقدار اختلاف اللوحات السليمة.',
  },
  press: {
    title: 'اختبارات الضغط',
    line: 'الخط',
    place: 'الموضع المضغوط',
    finding: 'النتيجة',
    answered: 'الاستجابة',
    answeredOf: (n, cycles) => `${n} من ${cycles}`,
    pressedValue: 'أثناء الضغط',
    releasedValue: 'دون ضغط',
    raw: 'قيمة p الخام',
    adjusted: 'قيمة p المعدّلة',
    findings: {
      loose: 'مرتخية: تعود القراءة تحت الضغط',
      cracked: 'متشققة: تضيع القراءة تحت الضغط',
      bridged: 'جسر: يظهر القصر أو يزول تحت الضغط',
      'steady-open': 'يبقى مفتوحًا',
      steady: 'يبقى كما هو',
      inconclusive: 'بلا جواب واضح',
    },
    anyPlace: 'لم تُسمَّ قطعة',
    bareBoard: 'لوحة بلا قطع، للمقارنة',
    compared: (line, outcome, parts) => {
      switch (outcome) {
        case 'one':
          return say`${line}: من بين كل المواضع المضغوطة كانت ${parts} الأكثر استجابة.`;
        case 'tied':
          return say`${line}: تساوت استجابة ${parts} فلم يمكن التمييز بينها.`;
        case 'all':
          return say`${line}: كل المواضع تستجيب، أو تستجيب اللوحة نفسها: اللوحة تنثني أو تتحرك نقطة لحام الطرف.`;
        case 'none':
          return say`${line}: لا يستجيب أي موضع.`;
      }
    },
    noSham: 'لم تُضغط اللوحة الخالية للمقارنة، فلا يمكن التمييز بين انثناء اللوحة ونقطة اللحام.',
    trace: (line, place, finding) => say`${line}، ${place}: ${finding}`,
    pressing: 'من إشارة الضغط إلى إشارة الرفع',
    limits: 'اللوحة السليمة',
    explained:
      'قيمة p أحادية الجانب ودقيقة (Fisher, The Design of Experiments, 1935): احتمال أن توافق النوافذ الإشارات بهذا القدر لو لم يكن للضغط أثر. والقيمة المعدّلة تراعي تكرار النظر بعد كل دورة والاتجاهين معًا. ويستجيب الناس للإشارة بعد 0.2 إلى 0.5 ثانية.',
  },
  freePress: {
    title: 'الضغط الحر',
    rests: 'في حالة السكون',
    restsAt: { contact: 'يُقرأ كما ينبغي', none: 'لا يُقرأ كما ينبغي' },
    left: 'مرات التغيّر',
    reads: 'القراءة عندئذ',
    dwell: 'المدة',
    repeats: 'التكرار',
    doesRepeat: 'يتكرر',
    doesNotRepeat: 'لم يثبت',
    marked: 'الضغطات المعلَّمة',
    marks: (away, presses, between) => `تغيّر في ${away} من ${presses}، وبين الضغطات ${between}`,
    noMarks: 'لم تُعلَّم ضغطات',
    trace: (line) => say`${line}، ضغط حر`,
    explained:
      'ضغط الفني متى شاء. يُحسب التغيّر إذا دام أطول من ارتداد أو انزلاق، ويتكرر إذا حدث ثلاث مرات بقراءات متقاربة. ومن دون ضغطات معلَّمة لا شيء يثبت أن اليد هي السبب. قيمة p للضغطات المعلَّمة أحادية الجانب وخام، وقد يحاكيها إيقاع منتظم: اختبار الضغط المنظَّم دليل أقوى.',
  },
  suspects: {
    title: 'المواضع المشتبه فيها',
    place: 'الموضع',
    lines: 'الخطوط',
    probability: 'الاحتمال',
    none: 'لا يوجد عطل',
    other: 'شيء لا يذكره ملف الموصل',
    chain: (pin, line) => say`على امتداد ${line}، من الطرف ${pin} إلى الشريحة`,
    next: ({ probe, side }, { line, pin, part }) => {
      const at = pin === null ? say`${line}` : say`الطرف ${pin} (${line})`;
      const place = part ?? line;
      switch (probe) {
        case 'retake':
          return say`الأفضل بعد ذلك: لمس ${at} من جديد.`;
        case 'other-ground':
          return say`الأفضل بعد ذلك: نقل المشبك إلى أرضي آخر ولمس ${at} من جديد.`;
        case 'press':
          return say`الأفضل بعد ذلك: الضغط على ${place} أثناء قياس ${at}.`;
        case 'place':
          return side === 'chip'
            ? say`الأفضل بعد ذلك: قياس ${line} عند الشريحة.`
            : say`الأفضل بعد ذلك: قياس ${line} عند الجهة ${side === 'near' ? 'القريبة' : 'البعيدة'} من ${place}.`;
      }
    },
    explained:
      'احتمالات بحسب كل الأحكام واختبارات الضغط والقياسات في هذه الجلسة، مع الاحتمالات المسبقة والمسارات في ملف الموصل. وقد يتعطل موضعان معًا، فلا يلزم أن يكون مجموعها 100 %.',
  },
  probed: {
    title: 'المواضع المقيسة على طول الخط',
    place: 'الموضع',
    atChip: 'عند الشريحة',
    side: (part, near) => say`${part}، ${near ? 'من جهة الطرف' : 'من جهة الشريحة'}`,
    explained:
      'قيست بالمجس والأرضي نفسيهما. وإذا كان الموضع يُقرأ كما ينبغي والطرف الذي قبله لا يُقرأ كذلك فالعطل بينهما.',
  },
};
