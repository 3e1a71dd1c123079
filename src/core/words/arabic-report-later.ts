// The Arabic of what a report says of the work after the walk.
import { arabicCount } from './arabic-count.js';
import { join, say } from './report-phrase.js';
import type { LaterWords } from './report-words-later.js';

const times = { one: 'مرة واحدة', two: 'مرتين', few: 'مرات', many: 'مرة', other: 'مرة' };
const places = { one: 'موضع واحد', two: 'موضعين', few: 'مواضع', many: 'موضعًا', other: 'موضع' };

export const arabicLater: LaterWords = {
  action: {
    reflow: 'أُعيد صهر اللحام',
    resolder: 'أُعيد اللحام',
    replace: 'استُبدل',
    remove: 'أُزيل',
    fit: 'رُكِّب',
    wire: 'وُصل بسلك',
    clean: 'نُظِّف',
    inspect: 'فُحص بالنظر',
    other: 'عُمل عليه',
  },
  tool: {
    'hot-air': 'هواء ساخن',
    iron: 'كاوية لحام',
    tweezers: 'ملقط حراري',
    infrared: 'أشعة تحت الحمراء',
    preheater: 'مسخّن مسبق',
    other: 'أداة أخرى',
  },
  unnamedPlace: 'موضع بلا اسم',
  difference: {
    changed: 'تغيّر',
    unchanged: 'لم يتغيّر',
    'newly-bad': 'خلل جديد',
    unknown: 'لا تصح المقارنة',
  },
  because: {
    bad: 'لم يكن طبيعيًا',
    mate: 'قرين خط معطوب',
    part: 'يمر بقطعة عولجت',
    heat: 'قرب الحرارة',
    supply: 'تغذية',
    control: 'لم يُمس',
    anchor: 'أرضي على الطريق',
  },
  outcome: {
    good: 'جيدة: ما كان معطوبًا يُقرأ الآن سليمًا، ولم يسؤ شيء آخر',
    wait: 'انتظار: خطوط لم تُمس تُقرأ على غير ما كانت، فاللوحة كانت دافئة أو رطبة',
    bad: 'غير جيدة: ما زال شيء معطوبًا، أو ظهر خلل جديد، أو يتحرك شيء تحت الضغط',
    incomplete: 'غير مكتملة: لم يُقرأ أو يُضغط من جديد كل ما كان موضع شك',
  },
  doubt: {
    'no-recheck': 'لم تُقَس اللوحة من جديد بعد العمل.',
    'before-rework': 'آخر قياس أقدم من آخر عمل على اللوحة.',
    wait: 'وجد آخر قياس اللوحة دافئة أو رطبة، فلا يثبت شيئًا.',
    bad: 'لم يكن آخر قياس جيدًا.',
    incomplete: 'آخر قياس غير مكتمل.',
  },
  as: {
    repaired: 'أُصلح',
    'partly-repaired': 'أُصلح جزئيًا',
    'not-repaired': 'لم يُصلح',
    returned: 'أُعيد دون إصلاح',
  },
  draw: {
    'as-expected': 'كما هو متوقع',
    'too-high': 'أعلى من اللازم',
    'too-low': 'أقل من اللازم',
    'not-known': 'لا يُعرف أصحيح هو أم لا',
  },
  works: { yes: 'يعمل', partly: 'يعمل جزئيًا', no: 'لا يعمل' },
  owner: {
    repaired: (proven) =>
      proven
        ? 'أُصلح: الأعطال التي وُجدت تُقرأ سليمة عند القياس من جديد.'
        : 'أغلقه الفني على أنه أُصلح؛ والقياسات وحدها لا تثبت ذلك.',
    partlyRepaired: 'أُصلح جزئيًا.',
    notRepaired: 'لم يُصلح.',
    returned: 'أُعيد دون إصلاح.',
    beforeWork: (tally) => say`قبل العمل: ${tally}`,
    done: (place, action, n, heat) => {
      const often = n === 1 ? '' : ` ${arabicCount(n, times)}`;
      return heat === null
        ? say`${place}: ${action}${often}.`
        : say`${place}: ${action}${often}، ومجموع الحرارة ${heat}.`;
    },
    moreDone: (n) => `و${n} غير ذلك في الصفحات الفنية.`,
    rechecked: (read, total, outcome) =>
      say`القياس من جديد بعد العمل، ${read} من أصل ${arabicCount(total, places)}: ${outcome}.`,
    pressedAgain: (n) =>
      n === 1
        ? 'ضُغط الموضع الذي كان مرتخيًا من جديد فبقي ثابتًا.'
        : `ضُغط ${arabicCount(n, places)} كانت مرتخية من جديد فبقيت ثابتة.`,
    functionTested: (tested, works) => say`اختبار الوظيفة، ${tested}: ${works}.`,
    power: (draw) => say`التيار المسحوب من مصدر التغذية على الطاولة: ${draw}.`,
    noPower: 'التيار المسحوب من مصدر التغذية على الطاولة قبل أول تشغيل.',
    reason: (text) => say`السبب المذكور: ${text}`,
    cause: (text) => say`سبب العطل كما وجده الفني: ${text}.`,
  },
  rework: {
    title: 'المعالجة والحرارة',
    at: 'الوقت',
    place: 'الموضع',
    action: 'ما جرى',
    setting: 'الأداة',
    heat: 'الحرارة',
    note: 'ملاحظة',
    setPoint: (figure) => say`${figure}`,
    airflow: (figure) => say`الهواء ${figure}`,
    atLeast: 'على الأقل؛ انتهى البرنامج والحرارة قائمة',
    confirmed: 'أُكدت التنبيهات قبل الحرارة.',
    totals: (where, total, allowed) =>
      allowed === null
        ? say`${where}: مجموع الحرارة ${total}؛ ولا حد معطى.`
        : say`${where}: مجموع الحرارة ${total} من أصل ${allowed}.`,
    passed: (where, allowed) => say`${where}: تجاوز الحد ${allowed}.`,
  },
  recheck: {
    title: 'قبل وبعد',
    caption: 'كل طرف قيس من جديد',
    file: 'الملف',
    fingerprint: 'البصمة',
    began: 'البداية',
    result: 'النتيجة',
    controls: 'خطوط لم تُمس',
    controlsAre: {
      'as-before': 'تُقرأ كما كانت',
      moved: 'تُقرأ على غير ما كانت',
      unread: 'لم تُقرأ كلها',
    },
    pressed: 'ضُغط من جديد',
    pressIs: {
      stays: 'ثابت',
      moves: 'يتحرك',
      unclear: 'لا جواب واضحًا',
      'not-pressed': 'لم يُضغط',
    },
    notFinished: 'لم تكتمل إعادة القياس.',
    pin: 'الطرف',
    line: 'الخط',
    why: 'السبب',
    before: 'قبل',
    after: 'بعد',
    compared: 'المقارنة',
    score: 'نسبة الفرق',
    explained:
      'نسبة الفرق هي الفرق مقسومًا على عدم يقينه الموسع: إذا زادت على 1 فالقراءتان مختلفتان. تُعد القراءتان مستقلتين، فلا يُسمى الشيء تغيّرًا إلا إذا كان واضحًا.',
  },
  tests: {
    title: 'الاختبارات والإغلاق',
    power: 'مصدر التغذية',
    drawn: (amperes, volts, limit, draw) =>
      join(
        [
          ...(amperes === null ? [] : [say`${amperes}`]),
          ...(volts === null ? [] : [say`عند ${volts}`]),
          ...(limit === null ? [] : [say`بحد ${limit}`]),
          draw,
        ],
        '، ',
      ),
    function: 'اختبار الوظيفة',
    closed: 'أُغلق على أنه',
    reason: 'السبب',
    cause: 'موضع العطل',
    restsOn: 'يستند إلى',
    open: 'لم يُغلق بعد',
  },
};
