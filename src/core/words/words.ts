// Everything the program says to a person, as a catalogue: another language is another file of this shape.
// Values arrive formatted and foreign text arrives cleaned.
import type { EventOf, HoldReason, Question } from '../events.js';
import type { ActName, CueName, LinkChange } from '../inputs.js';
import type { PadCommand } from '../pads/pad.js';
import type { PressFinding } from '../press/decide-press.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import type { Verdict } from '../verdict.js';
import type { ConfigWords } from './config-words.js';
import type { ContextWords } from './context-words.js';
import type { DrillWords } from './drill-words.js';
import type { GuideWords } from './guide-words.js';
import type { HistoryWords } from './history-words.js';
import type { JobWords } from './job-words.js';
import type { PadWords } from './pad-words.js';
import type { ProfileWords } from './profile-words.js';
import type { RefusalWords } from './refusal-words.js';
import type { ReplayWords } from './replay-words.js';
import type { ReworkWords } from './rework-words.js';
import type { ScreenWords } from './screen-words.js';
import type { ShareWords } from './share-words.js';
import type { SpokenWords } from './spoken-words.js';

type Ranked = EventOf<'suspects-ranked'>;
type SuspectKind = Ranked['suspects'][number]['where'];
/** A probe by the names of its place. */
export type NextProbe = Pick<
  NonNullable<Ranked['next']>,
  'probe' | 'line' | 'pin' | 'part' | 'side'
>;

export interface Words {
  readonly language: string;
  readonly guide: GuideWords;
  readonly config: ConfigWords;
  readonly drill: DrillWords;
  readonly share: ShareWords;
  readonly refusals: RefusalWords;
  readonly history: HistoryWords;
  readonly context: ContextWords;
  readonly verdict: Readonly<Record<Verdict, string>>;
  readonly measure: Readonly<Record<MeasureFunction, string>>;
  readonly polarity: Readonly<Record<Polarity, string>>;
  readonly overload: string;
  opened(profile: string, measure: MeasureFunction, polarity: Polarity): string;
  readonly simulated: string;
  resumed(pin: string | null, tornBytes: number): string;
  readonly addedTo: string;
  closed(tally: string, fingerprint: string): string;
  savedIn(file: string): string;
  /** Commands that go on from a walk: left half way, with findings, or all normal. */
  goOnWith(how: 'half-way' | 'findings' | 'normal', file: string): string;
  reportWritten(file: string): string;
  /** `ofBoards`: the first is the donor's, the second the patient's. */
  touchGround(which: 1 | 2, ofBoards: boolean): string;
  groundTouched(which: 1 | 2, value: string): string;
  readonly groundRepeated: string;
  groundMissed(value: string): string;
  readonly groundGood: string;
  readonly groundSkipped: string;
  groundDoubted(opens: number): string;
  reached(pin: string, line: string): string;
  /** The same where two boards are walked in turns. */
  reachedOn(board: 'donor' | 'patient', pin: string, line: string): string;
  readonly board: Readonly<Record<'donor' | 'patient', string>>;
  /** `sure`: how sure that is, in words and number. */
  judged(
    pin: string,
    line: string,
    value: string,
    verdict: Verdict,
    sure: string,
    expected: string,
  ): string;
  readonly expectedOverload: string;
  expectedBetween(low: string, high: string): string;
  readonly expectedNothing: string;
  readonly touchAgain: string;
  question(question: Question, pin: string): string;
  answered(question: Question, pin: string): string;
  held(reason: HoldReason, detail: string): string;
  readonly freed: string;
  paused(reason: 'asked' | 'link-lost' | 'meter-silent' | 'file-blocked'): string;
  continued(pin: string): string;
  link(change: LinkChange, detail: string): string;
  refused(act: ActName, reason: string): string;
  taken(act: ActName, pin: string, text: string): string;
  /** What a reply pad says when it is touched twice. */
  readonly reply: Readonly<Record<PadCommand, string>>;
  replyAsked(reply: PadCommand): string;
  replyGiven(reply: PadCommand): string;
  replyCancelled(reply: PadCommand): string;
  replyShadowed(reply: PadCommand): string;
  realigned(shift: number, pin: string): string;
  finished(tally: string): string;
  /** "36 normal, 2 open": verdicts that occur, in order. */
  tally(counts: readonly (readonly [Verdict, number])[]): string;
  meterSpoke(says: 'identity' | 'error' | 'no-answer', text: string): string;
  /** @param chance the adjusted p-value, written. */
  pressJudged(
    line: string,
    part: string | null,
    finding: PressFinding,
    cycles: number,
    chance: string,
  ): string;
  /** A place under the tool: a part's name, bare board, or a part that has no name here. */
  place(place: string | null): string;
  /** `free`: without cues, the technician presses at will. */
  pressBegun(pin: string, line: string, free: boolean): string;
  /** While pressed at will; the value is written, null for overload. */
  readingTurned(line: string, reads: boolean, value: string | null): string;
  pressTraced(
    line: string,
    traced: {
      readonly rests: 'contact' | 'none' | null;
      readonly times: number;
      readonly dwellS: number | null;
      readonly repeats: boolean;
      readonly marked: {
        readonly presses: number;
        readonly away: number;
        readonly between: number;
        readonly chance: string;
      } | null;
    },
  ): string;
  pressMoved(place: string | null, sham: boolean): string;
  cueGiven(cue: CueName, place: string | null): string;
  pressCompared(line: string, outcome: 'one' | 'tied' | 'all' | 'none', parts: string): string;
  /** The likeliest places at fault, each with its share in percent; empty where nothing is. */
  suspects(places: readonly (readonly [place: string, percent: number])[]): string;
  suspect(where: SuspectKind, id: string): string;
  /** A lead is the likeliest suspect: it is looked at before any joint. */
  checkLead(lead: string): string;
  nextProbe(probe: NextProbe): string;
  /** A line from its pin to the chip, each place with its share in percent. */
  chain(line: string, places: readonly (readonly [place: string, percent: number])[]): string;
  probeBegun(probe: Pick<NextProbe, 'probe'>, place: string): string;
  placeJudged(place: string, value: string, verdict: Verdict, expected: string): string;
  readonly probeGivenUp: string;
  pinName(pin: string): string;
  pinPlace(pin: string, line: string): string;
  /** A place along a line: the near side of a part is the one towards the pin. */
  probePlace(line: string, part: string | null, side: 'near' | 'far' | 'chip'): string;
  /** How many places were press-tested. */
  pressTests(places: number): string;
  pressEnded(reason: 'done' | 'given-up'): string;
  readonly assumedAccuracy: string;
  verdictChanged(pin: string, line: string, before: string, now: string): string;
  verdictsChanged(count: number): string;
  file(change: 'blocked' | 'writable', detail: string): string;
  readonly screen: ScreenWords;
  readonly replay: ReplayWords;
  readonly pads: PadWords;
  readonly rework: ReworkWords;
  readonly spoken: SpokenWords;
  readonly job: JobWords;
  readonly profile: ProfileWords;
}
