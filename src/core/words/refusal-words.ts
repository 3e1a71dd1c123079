// What a command says when it does not begin: what is wrong with what it was given, and what to give instead.
import type { MeasureFunction } from '../reading.js';

export interface RefusalWords {
  /** `kind` as the file gives itself out, or null for what is none of ours. */
  otherThanSession(file: string, kind: string | null): string;
  emptySession(file: string): string;
  noSession(file: string): string;
  nothingToResume(file: string): string;
  nothingToRecheck(session: string): string;
  noRecheckOf(file: string, session: string): string;
  /** `doubt` whether the board is repaired. */
  notProven(doubt: string): string;
  neverReplaced(file: string): string;
  learnedFrom(file: string): string;
  givenTwice(file: string): string;

  readonly whichMeter: string;
  readonly linkLost: string;
  needsDriver(link: string): string;
  readonly notAskable: string;
  notServed(why: string): string;

  readonly whichConnector: string;
  readonly whichConnectorForPads: string;
  readonly logNeedsProfile: string;
  noLine(profile: string, line: string, known: readonly string[]): string;
  noPart(part: string, known: readonly string[]): string;
  /** `near`: the known name that was probably meant. */
  noObservation(
    profile: string,
    name: string,
    known: readonly string[],
    near: string | undefined,
  ): string;
  noProfileName(name: string): string;
  readonly howManyPins: string;
  donorNamed(name: string): string;

  /** What is wrong with what was written behind an option. */
  behind(option: string, why: string): string;
  speed(slowest: number, fastest: number): string;
  readonly jsonOrPlain: string;
  readonly tcpOrPty: string;
  readonly compareOrBeside: string;
  readonly functionWithWorks: string;
  readonly drawNotJudged: string;
  readonly nothingToNote: string;
  readonly outWithoutProfile: string;
  readonly partUnnamed: string;
  readonly pressWithoutReadings: string;
  readonly logHasOneForm: string;
  tooFastForScreen(fastest: number): string;
  zeroWithoutOhms(measure: MeasureFunction): string;
  readonly referenceWithoutValue: string;
  padsOfOtherFunction(file: string, learned: MeasureFunction, walked: MeasureFunction): string;
  readonly padsTyped: string;
  readonly noKeyboard: string;
  readonly noTerminal: string;
  readonly leftEarly: string;
}
