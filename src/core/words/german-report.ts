// A report in German: the owner's page, and what it shares with the technical pages, which stay English. Figures are
// written with the point that a meter shows.
import { englishReport } from './english-report.js';
import { join, type Phrase, say } from './report-phrase.js';
import type { NamedPins, OwnerWords, ReportWords, SharedWords } from './report-words.js';
import type { JobReportWords } from './report-words-job.js';
import type { LaterWords } from './report-words-later.js';

const pinNames = ({ names, count }: NamedPins): Phrase =>
  count === 1 ? say`Pin ${names}` : say`Pins ${names}`;

const atPins = ({ names, count }: NamedPins): Phrase =>
  count === 1 ? say`an Pin ${names}` : say`an den Pins ${names}`;

const pins = (n: number): string => `${n} ${n === 1 ? 'Pin' : 'Pins'}`;

const months = [
  ...['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni'],
  ...['Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'],
] as const;

const measured = {
  resistance: 'der Widerstand von jedem Pin zur Masse',
  diode: 'der Spannungsabfall von jedem Pin zur Masse bei kleinem Prüfstrom (Diodentest)',
  continuity: 'der Durchgang von jedem Pin zur Masse',
  'dc-volts': 'die Gleichspannung zwischen jedem Pin und Masse',
} as const;

const job: JobReportWords = {
  title: 'Annahme',
  broughtTitle: 'Was abgegeben wurde',
  field: {
    ticket: 'Auftrag',
    device: 'Gerät',
    symptom: 'Fehlerbild',
    history: 'Vorgeschichte',
    seen: 'Im Mikroskop',
    dataMatters: 'Daten',
  },
  dataMatters: {
    yes: 'Bei der Annahme wurde vermerkt, dass Ihnen die Daten auf dem Gerät wichtig sind.',
    no: 'Bei der Annahme wurde vermerkt, dass Ihnen die Daten auf dem Gerät nicht wichtig sind.',
    unknown: 'Bei der Annahme wurde nicht geklärt, ob Ihnen die Daten auf dem Gerät wichtig sind.',
  },
  data: {
    yes: 'dem Besitzer wichtig',
    no: 'dem Besitzer nicht wichtig',
    unknown: 'nicht geklärt, ob sie wichtig sind',
  },
  cautions: {
    title: 'Bestätigte Vorsichtsmaßnahmen',
    by: { keyboard: 'an der Tastatur', option: 'durch eine Option' },
    none: 'In dieser Sitzung wurde keine bestätigt.',
  },
  residual: {
    title: 'Restspannung vor der ersten Messung',
    at: 'Um',
    where: 'Leitung',
    input: 'Versorgungseingang',
    volts: 'Volt',
    says: 'Bedeutet',
    discharged: (limit) => say`entladen (höchstens ${limit})`,
    charged: (limit) => say`geladen (mehr als ${limit})`,
    by: { meter: 'vom Messgerät', typed: 'eingetippt' },
    skipped: (reason) => say`Nicht gemessen: ${reason}`,
    none: 'Nicht gemessen.',
  },
  photos: { title: 'Fotos', file: 'Datei', hash: 'SHA-256', size: 'Bytes' },
  triage: {
    title: 'Ersteinschätzung',
    observation: 'Beobachtet',
    answer: 'Antwort',
    says: { yes: 'ja', no: 'nein', unknown: 'nicht angesehen' },
    likely: 'Am wahrscheinlichsten',
    other: 'etwas, das das Profil nicht nennt',
    walkFirst: 'Zuerst messen',
    leaveAlone: 'In Ruhe lassen',
    nothing: 'nichts',
    how: 'Gewichtet nach der Fehlertabelle des Profils: wie oft jede Beobachtung zu jedem Fehlerbild gehört. Ein Vorschlag, kein Befund.',
  },
};

const later: LaterWords = {
  action: {
    reflow: 'Lot umgeschmolzen',
    resolder: 'nachgelötet',
    replace: 'ersetzt',
    remove: 'entfernt',
    fit: 'eingesetzt',
    wire: 'mit Draht überbrückt',
    clean: 'gereinigt',
    inspect: 'begutachtet',
    other: 'bearbeitet',
  },
  tool: {
    'hot-air': 'Heißluft',
    iron: 'Lötkolben',
    tweezers: 'Heizpinzette',
    infrared: 'Infrarot',
    preheater: 'Vorheizer',
    other: 'anderes Werkzeug',
  },
  unnamedPlace: 'eine Stelle ohne Namen',
  difference: {
    changed: 'geändert',
    unchanged: 'unverändert',
    'newly-bad': 'neu fehlerhaft',
    unknown: 'nicht vergleichbar',
  },
  because: {
    bad: 'vorher nicht normal',
    mate: 'Partner einer fehlerhaften Leitung',
    part: 'führt durch ein bearbeitetes Bauteil',
    heat: 'nahe der Hitze',
    supply: 'Versorgung',
    control: 'unberührt',
    anchor: 'Masse am Weg',
  },
  outcome: {
    good: 'gut: was fehlerhaft war, misst sich gut, und nichts ist schlechter geworden',
    wait: 'warten: unberührte Leitungen messen sich anders als vorher, die Platine war also warm oder feucht',
    bad: 'nicht gut: etwas ist noch oder neu fehlerhaft oder bewegt sich unter Druck',
    incomplete: 'unvollständig: nicht alles Fragliche wurde erneut gemessen oder gedrückt',
  },
  doubt: {
    'no-recheck': 'Die Platine wurde nach der Arbeit nicht noch einmal gemessen.',
    'before-rework': 'Die letzte Messung ist älter als die letzte Arbeit an der Platine.',
    wait: 'Bei der letzten Messung war die Platine warm oder feucht; sie beweist deshalb nichts.',
    bad: 'Die letzte Messung war nicht gut.',
    incomplete: 'Die letzte Messung ist nicht vollständig.',
  },
  as: {
    repaired: 'repariert',
    'partly-repaired': 'teilweise repariert',
    'not-repaired': 'nicht repariert',
    returned: 'ohne Reparatur zurückgegeben',
  },
  draw: {
    'as-expected': 'wie erwartet',
    'too-high': 'zu hoch',
    'too-low': 'zu niedrig',
    'not-known': 'nicht bekannt, ob richtig',
  },
  works: { yes: 'funktioniert', partly: 'funktioniert teilweise', no: 'funktioniert nicht' },
  owner: {
    repaired: (proven) =>
      proven
        ? 'Repariert: Die gefundenen Fehler messen sich bei erneuter Messung gut.'
        : 'Vom Techniker als repariert abgeschlossen; die Messungen allein beweisen es nicht.',
    partlyRepaired: 'Teilweise repariert.',
    notRepaired: 'Nicht repariert.',
    returned: 'Ohne Reparatur zurückgegeben.',
    beforeWork: (tally) => say`Vor der Arbeit: ${tally}`,
    done: (place, action, times, heat) => {
      const often = times === 1 ? '' : ` (${times}-mal)`;
      return heat === null
        ? say`${place}: ${action}${often}.`
        : say`${place}: ${action}${often}, insgesamt ${heat} erhitzt.`;
    },
    moreDone: (n) => `${n} weitere auf den technischen Seiten.`,
    rechecked: (read, total, outcome) =>
      say`Nach der Arbeit erneut gemessen, ${read} von ${total} Stellen: ${outcome}.`,
    pressedAgain: (n) =>
      n === 1
        ? 'Die lose Stelle wurde noch einmal gedrückt und hielt.'
        : `${n} lose Stellen wurden noch einmal gedrückt und hielten.`,
    functionTested: (tested, works) => say`Funktionstest, ${tested}: ${works}.`,
    power: (draw) => say`Stromaufnahme am Labornetzteil: ${draw}.`,
    noPower: 'Die Stromaufnahme am Labornetzteil vor dem ersten Einschalten.',
    reason: (text) => say`Angegebener Grund: ${text}`,
    cause: (text) => say`Ursache nach Befund des Technikers: ${text}.`,
  },
  rework: {
    title: 'Nacharbeit und Hitze',
    at: 'Um',
    place: 'Stelle',
    action: 'Getan',
    setting: 'Werkzeug',
    heat: 'Hitze',
    note: 'Notiz',
    setPoint: (figure) => say`${figure}`,
    airflow: (figure) => say`Luft ${figure}`,
    atLeast: 'mindestens; das Programm endete bei eingeschalteter Hitze',
    confirmed: 'Die Vorsichtsmaßnahmen vor der Hitze wurden bestätigt.',
    totals: (where, total, allowed) =>
      allowed === null
        ? say`${where}: insgesamt ${total} erhitzt; keine Grenze angegeben.`
        : say`${where}: insgesamt ${total} von ${allowed} erhitzt.`,
    passed: (where, allowed) => say`${where}: Die Grenze von ${allowed} wurde überschritten.`,
  },
  recheck: {
    title: 'Vorher und nachher',
    caption: 'Jeder erneut gemessene Pin',
    file: 'Datei',
    fingerprint: 'Fingerabdruck',
    began: 'Beginn',
    result: 'Ergebnis',
    controls: 'Unberührte Leitungen',
    controlsAre: {
      'as-before': 'messen sich wie vorher',
      moved: 'messen sich anders als vorher',
      unread: 'nicht alle gemessen',
    },
    pressed: 'Erneut gedrückt',
    pressIs: {
      stays: 'hält',
      moves: 'bewegt sich',
      unclear: 'keine klare Antwort',
      'not-pressed': 'nicht gedrückt',
    },
    notFinished: 'Die Nachmessung wurde nicht zu Ende geführt.',
    pin: 'Pin',
    line: 'Leitung',
    why: 'Warum',
    before: 'Vorher',
    after: 'Nachher',
    compared: 'Vergleich',
    score: 'E',
    explained:
      'E ist der Unterschied geteilt durch seine erweiterte Unsicherheit (nach dem GUM): Über 1 unterscheiden sich die Messwerte. Beide gelten als unabhängig, eine Änderung muss also deutlich sein, um so zu heißen.',
  },
  tests: {
    title: 'Tests und Abschluss',
    power: 'Labornetzteil',
    drawn: (amperes, volts, limit, draw) =>
      join(
        [
          ...(amperes === null ? [] : [say`${amperes}`]),
          ...(volts === null ? [] : [say`bei ${volts}`]),
          ...(limit === null ? [] : [say`begrenzt auf ${limit}`]),
          draw,
        ],
        ', ',
      ),
    function: 'Funktionstest',
    closed: 'Abgeschlossen als',
    reason: 'Grund',
    cause: 'Ursache',
    restsOn: 'Beruht auf',
    open: 'noch nicht abgeschlossen',
  },
};

const shared: SharedWords = {
  language: 'de',
  direction: 'ltr',
  comma: ', ',
  job,
  later,
  arrow: ' → ',
  more: (n) => `und ${n} weitere`,
  verdict: {
    normal: 'normal',
    low: 'zu niedrig',
    high: 'zu hoch',
    short: 'Kurzschluss',
    open: 'offen',
    unsure: 'unklar',
    wobble: 'unstet',
    unread: 'nicht gemessen',
  },
  measure: {
    resistance: 'Widerstand zur Masse',
    diode: 'Diodentest',
    continuity: 'Durchgang zur Masse',
    'dc-volts': 'Gleichspannung',
  },
  polarity: {
    'red-walks': 'rote Spitze misst, schwarze an Masse',
    'black-walks': 'schwarze Spitze misst, rote an Masse',
  },
  overload: 'Überlauf',
  place: (where, id) =>
    ({ joint: say`Lötstelle ${id}`, part: say`Bauteil ${id}`, chip: say`Chip ${id}` })[where],
  lead: { 'ground-clip': 'die Masseklemme', 'walking-lead': 'die Messleitung' },
  day: ({ year, month, day }) => `${day}. ${months[month - 1] ?? month} ${year}`,
  atMost: (limit) => say`höchstens ${limit}`,
  between: (low, high) => say`${low} bis ${high}`,
};

const owner: OwnerWords = {
  title: 'Übergabebericht',
  connector: (id, title) =>
    title === null ? say`Steckverbinder ${id}` : say`Steckverbinder ${id}: ${title}`,
  when: (span) => {
    if (span === null) return 'Es ist kein Datum vermerkt.';
    const { day, from, lastDay, to, zone } = span;
    const end = lastDay === null ? say`${to}` : say`${lastDay}, ${to}`;
    const place = zone === null ? '' : say` (${zone})`;
    return say`Gemessen am ${day}, ${from} bis ${end}${place}`;
  },
  simulated: {
    title: 'Simulierte Messwerte.',
    text: 'Sie stammen vom virtuellen Messplatz, einem Übungsprogramm, und nicht von einem Messgerät. Kein Gerät wurde gemessen, und diese Seite beweist nichts über irgendein Gerät.',
  },
  demo: {
    title: 'Erfundenes Profil.',
    text: 'Steckverbinder und erwartete Werte sind Vorführdaten und gehören zu keiner wirklichen Platine.',
  },
  recorded: {
    title: 'Aus einer Aufzeichnung.',
    text: 'Die Messwerte stammen aus einem gespeicherten Messprotokoll. Wann und an welchem Gerät sie aufgenommen wurden, gehört nicht zu dieser Aufzeichnung.',
  },
  redacted: (of) => ({
    title: 'Ohne Kundendaten.',
    text: say`Auftrag, Gerät, Fehlermeldung, Vorgeschichte, Notizen, Fotos und Dateinamen wurden vor der Weitergabe entfernt. Messungen und Befunde sind vollständig. Die ganze Aufzeichnung hat den Fingerabdruck ${of}.`,
  }),
  unfinished: (left, total) => ({
    title: 'Nicht beendet.',
    text: `${left} von ${pins(total)} waren noch nicht gemessen, als dieser Bericht entstand.`,
  }),
  headline: {
    faults: (n, total) =>
      n === 1
        ? `1 von ${pins(total)} misst sich nicht wie auf einer guten Platine.`
        : `${n} von ${pins(total)} messen sich nicht wie auf einer guten Platine.`,
    unclear: (n, total) =>
      `Kein Pin ist eindeutig fehlerhaft, aber ${n} von ${pins(total)} ließen sich nicht entscheiden.`,
    partly: (read, left) =>
      `Gemessen: ${pins(read)}, dort wurde kein Fehler gefunden. Nicht gemessen: ${left}.`,
    allNormal: (total) =>
      `Vom Steckverbinder aus gesehen wurde kein Fehler gefunden (${pins(total)}).`,
    nothing: 'Es wurde noch nichts gemessen.',
  },
  tally: (counts) => counts.map(([word, n]) => `${n} ${shared.verdict[word]}`).join(', '),
  failed: {
    title: 'Was nicht in Ordnung war',
    fault: (pin, line, fault) => {
      const at = say`Pin ${pin}, ${line}`;
      switch (fault) {
        case 'open':
          return say`${at}: keine Verbindung, wo eine gute Platine eine hat.`;
        case 'open-unknown':
          return say`${at}: keine Verbindung.`;
        case 'short':
          return say`${at}: fast unmittelbar mit Masse verbunden.`;
        case 'low':
          return say`${at}: niedriger als auf einer guten Platine; etwas lässt Strom durch, das es nicht sollte.`;
        case 'high':
          return say`${at}: höher als auf einer guten Platine; ein Teil des Weges kann unterbrochen sein.`;
        case 'unexpected':
          return say`${at}: eine Verbindung, wo eine gute Platine keine hat.`;
      }
    },
    read: (value, good) =>
      good === null ? say`Gemessen: ${value}.` : say`Gemessen: ${value}. Gute Platine: ${good}.`,
    readNothing: 'nichts (Überlauf)',
    unclear: (named) => say`Nicht zu entscheiden: ${pinNames(named)}.`,
    nothingMeasured: 'Es wurde nichts gemessen, also lässt sich nichts sagen.',
    none: 'An den gemessenen Pins wurde kein Fehler gefunden.',
    more: (n) =>
      n === 1
        ? '1 weiterer Befund auf den technischen Seiten.'
        : `${n} weitere Befunde auf den technischen Seiten.`,
    likely: (place, probability, at) =>
      say`Wahrscheinlichster Ort des Fehlers${at === null ? '' : say` ${atPins(at)}`}: ${place}, mit einer Wahrscheinlichkeit von ${probability}.`,
    unplaced: (named) =>
      say`Für ${pinNames(named)} nennen die Messungen allein keinen einzelnen Ort.`,
    likelyLead: (lead, probability) =>
      say`Das Gerät kann in Ordnung sein: ${lead} des Messgeräts erklärt die Messwerte mit einer Wahrscheinlichkeit von ${probability}.`,
  },
  why: {
    title: 'Warum wir das meinen',
    method: (measure) =>
      `Ein Steckverbinder hat kleine Kontakte, seine Pins. Sie wurden einer nach dem anderen mit der Spitze eines Messgeräts berührt. Gemessen wurde ${measured[measure]}. Die Messwerte wurden mit denen einer guten Platine an denselben Pins verglichen.`,
    repeated: 'Jede fehlerhafte Messung wurde wiederholt und ergab dasselbe.',
    confirmed:
      'Wo das Messgerät nichts zeigte, bestätigte der Techniker, dass die Spitze auf dem Pin war.',
    confidence: (least) => say`Sicherheit des am wenigsten sicheren dieser Befunde: ${least}.`,
    fromHere:
      'Das ist der Blick vom Steckverbinder aus: Ein Messwert sagt, dass hinter dem Pin etwas nicht stimmt, noch nicht, welche Lötstelle oder welches Bauteil.',
    pressed: (lines, part, finding) => {
      const pressed = part === null ? 'auf die Stelle' : say`auf Bauteil ${part}`;
      switch (finding) {
        case 'loose':
          return say`Immer wenn ${pressed} gedrückt wurde, kam der Messwert von ${lines} wieder: Dort ist eine Lötstelle lose.`;
        case 'cracked':
          return say`Immer wenn ${pressed} gedrückt wurde, ging der Messwert von ${lines} verloren: Dort ist eine Lötstelle gerissen.`;
        case 'bridged':
          return say`Immer wenn ${pressed} gedrückt wurde, wechselte der Messwert von ${lines} zu einem Kurzschluss und zurück: Dort ist etwas überbrückt.`;
      }
    },
  },
  done: {
    title: 'Was getan wurde',
    nothing: 'Es ist noch nichts vermerkt.',
    measuredOnly:
      'Die Pins wurden gemessen. In dieser Sitzung ist keine Reparatur vermerkt; falls es eine gab, gehört sie nicht zu diesem Bericht.',
    notes: (n) =>
      `Der Techniker schrieb ${n === 1 ? 'eine Notiz' : `${n} Notizen`}; siehe die technischen Seiten.`,
  },
  checked: {
    title: 'Was geprüft wurde',
    pins: (read, total, connector, measure) =>
      say`${read} von ${pins(total)} des Steckverbinders ${connector}: ${shared.measure[measure]}.`,
    meter: (meter) => say`Messgerät: ${meter}.`,
    typed: 'Die Messwerte wurden von Hand eingetippt.',
    groundGood:
      'Die Masseleitung: Zwei Massekontakte wurden zuerst berührt und maßen sich als Masse.',
    groundSkipped: 'Die Masseleitung wurde vorher nicht geprüft.',
    presses: (n) =>
      `${n === 1 ? 'Ein Drucktest' : `${n} Drucktests`}: Auf eine Stelle wurde im Takt gedrückt und dabei der Messwert beobachtet.`,
    sittings: (n) => `Die Arbeit wurde ${n === 1 ? 'einmal' : `${n}-mal`} wieder aufgenommen.`,
  },
  unchecked: {
    title: 'Was nicht geprüft wurde',
    function: 'Ob das Gerät funktioniert: Es ist kein Funktionstest vermerkt.',
    unread: (named) => say`Nicht gemessen: ${pinNames(named)}.`,
    unclear: (named) => say`Unklar: ${pinNames(named)}.`,
    unrepeated: (named) => say`Nur einmal gemessen, obwohl nicht normal: ${pinNames(named)}.`,
    nothingExpected: (named) =>
      say`Nur auf Kurzschluss geprüft, weil kein guter Wert bekannt ist: ${pinNames(named)}.`,
    readsNothing: (named) =>
      say`Wege, die auch auf einer guten Platine nichts zeigen, so dass eine Unterbrechung ebenso aussähe: ${pinNames(named)}.`,
    behind:
      'Lötstellen, die ein anderer Weg verdecken kann: Ein normaler Messwert beweist nicht jede Lötstelle hinter dem Pin. Bauteile, zu denen dieser Steckverbinder nicht führt.',
  },
  data: {
    title: 'Ihre Daten',
    text: 'Diese Aufzeichnung enthält Messwerte von Pins und Notizen des Technikers und nichts, was auf dem Gerät gespeichert ist. Ob bei der Arbeit Daten kopiert oder gelöscht wurden, ist hier nicht vermerkt.',
  },
  footer: (fingerprint, day) => say`Aufzeichnung ${fingerprint}. Bericht vom ${day}.`,
};

export const germanReport: ReportWords = { shared, owner, inDetail: englishReport.inDetail };
