// What the screens say beyond the events' own lines. Short: every text here has to fit a narrow terminal.
import type { HoldReason, Question } from '../events.js';
import type { ActName, ReadyStep } from '../inputs.js';
import type { PressScreenWords } from './press-screen-words.js';

/** What a key can do on the screen. */
export const screenActs = [
  'open',
  'next',
  'back',
  'skip',
  'retake',
  'press',
  'probe',
  'go-to',
  'note',
  'zero',
  'reference',
  'pause',
  'dismiss',
  'repeat',
  'review',
  'keys',
  'quit',
] as const;
export type ScreenAct = (typeof screenActs)[number];

export interface ScreenWords {
  /** One word each, for the key line. */
  readonly key: Readonly<Record<ScreenAct, string>>;
  /** A sentence each, for the page of keys. */
  readonly keyMeans: Readonly<Record<ScreenAct, string>>;
  readonly resume: string;
  /** For the large letters; Latin capitals, digits, "?" and "-" are drawn large, anything else as text. */
  readonly large: {
    readonly overload: string;
    readonly blank: string;
    readonly fault: string;
    readonly settling: string;
    readonly charging: string;
    readonly restless: string;
    readonly touch: string;
    readonly lift: string;
    ready(step: ReadyStep, refused: boolean): string;
    ground(which: 1 | 2, rests: boolean): string;
    readonly paused: string;
    readonly held: string;
    readonly trouble: string;
    readonly finished: string;
    question(question: Question, pin: string): string;
  };
  readonly title: {
    readonly groundCheck: string;
    readonly review: string;
    readonly keys: string;
    readonly latest: string;
  };
  readonly simulated: string;
  readonly simulatedShort: string;
  readonly row: string;
  range(fullScale: string): string;
  readonly next: string;
  /** Before the place that is probed beside the walk, and before the pin at which the walk waits meanwhile. */
  readonly probing: string;
  readonly goesOnAt: string;
  readonly last: string;
  readonly limit: { readonly low: string; readonly high: string };
  readonly expected: string;
  atMost(limit: string): string;
  /** How far a reading is from the nominal value, in percent of it. */
  off(percent: number): string;
  left(pins: number): string;
  readonly lift: string;
  confirm(next: string): string;
  confirmShort(next: string): string;
  question(
    question: Question,
    place: string,
    keys: { open: string; next: string; dismiss: string },
    expectedOverload: boolean,
  ): readonly string[];
  refused(act: ActName, reason: string): string;
  held(reason: HoldReason, detail: string): readonly string[];
  paused(
    reason: 'asked' | 'link-lost' | 'meter-silent' | 'file-blocked',
    key: string,
  ): readonly string[];
  trouble(reason: string): readonly string[];
  /** What is being tried, and how; `known`: what the reference should read. */
  readyOf(step: ReadyStep): string;
  readyStep(step: ReadyStep, known: string): string;
  groundOf(which: 1 | 2): string;
  /** `ofBoards`: the first is the donor's, the second the patient's. */
  groundStep(which: 1 | 2, ofBoards: boolean): string;
  /** Which board the probe belongs on, in capitals. */
  readonly board: Readonly<Record<'donor' | 'patient', string>>;
  /** A letter or two for the large contact while ground is looked for. */
  groundContact(which: 1 | 2): string;
  pin(pin: string): string;
  readonly pinOne: string;
  readonly viewed: Readonly<Record<'plug' | 'receptacle', string>>;
  readonly beforeYouBegin: string;
  readonly mate: string;
  readonly way: string;
  readonly branch: string;
  /** What else may explain a line, each in percent; empty where nothing does. */
  chainRest(lead: number, other: number, none: number): string;
  readonly allNormal: string;
  readonly noneFound: string;
  readonly choose: string;
  readonly goAndRetake: string;
  more(n: number): string;
  readonly goTo: string;
  readonly note: string;
  noteAt(pin: string): string;
  noPin(pin: string): string;
  readonly promptKeys: string;
  quitAsk(key: string): string;
  readonly anyKeyBack: string;
  tooSmall(columns: number, rows: number): string;
  place(at: number, total: number): string;
  readonly press: PressScreenWords;
  readonly learner: {
    readonly title: string;
    press(means: string): string;
    readonly hint: string;
    taken(name: string, means: string): string;
    never(name: string): string;
  };
  /** For a screen reader: lines instead of a screen. */
  readonly reader: {
    reading(reading: string): string;
    chosen(at: number, total: number, line: string): string;
    prompt(label: string): string;
    readonly left: string;
  };
}
