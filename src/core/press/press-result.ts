// The result of a press test: the fields of `press-judged`, and what a screen needs to say why.
import { median } from '../numbers/median.js';
import type { CueWindow } from './cue-window.js';
import { decidePress, type PressFinding } from './decide-press.js';
import { adjustedPValue } from './false-alarm.js';
import type { Pace } from './pace.js';
import { agreeing, cyclesOf, type PressCycle } from './press-cycle.js';
import type { PressSetup } from './press-setup.js';

export interface PressJudged {
  readonly line: string;
  readonly part: string | null;
  readonly finding: PressFinding;
  readonly cycles: number;
  /** One-sided and raw. */
  readonly pValue: number;
  /** For repeated looks and both directions; several parts: see `compare-parts`. */
  readonly adjustedPValue: number;
}

export interface PressResult extends PressJudged {
  /** False where the record ended before the test could decide. */
  readonly stops: boolean;
  /** Cycles that answered with both edges in their zones. */
  readonly answered: number;
  /** Median seconds from a press cue to the answer; null where nothing answered. */
  readonly answerS: number | null;
  /** Median value of press and of release windows; null where most show overload or nothing. */
  readonly pressedValue: number | null;
  readonly releasedValue: number | null;
  /** The cycles as judged: windows whose values disagreed are unclear. */
  readonly judged: readonly PressCycle[];
}

export const pressResult = (
  setup: PressSetup,
  windows: readonly CueWindow[],
  rest: CueWindow | null,
  pace: Pace,
): PressResult => {
  const paired = cyclesOf(windows, rest);
  // A charging line reads another value each time, and a contact resistance of half a short is nothing.
  const judged = setup.charges === true ? paired : agreeing(paired, setup.shortLimit / 2);
  const { finding, stops, pValue, answered } = decidePress(judged, pace.lagBandS);
  const presses = judged.map(({ press }) => press);
  return {
    line: setup.line,
    part: setup.part,
    finding,
    cycles: judged.length,
    pValue,
    adjustedPValue: adjustedPValue(pValue),
    stops,
    answered,
    answerS: middle(presses.map(({ locked, answerS }) => (locked ? answerS : null))),
    pressedValue: mostlyValue(presses),
    releasedValue: mostlyValue(judged.map(({ release }) => release)),
    judged,
  };
};

const mostlyValue = (windows: readonly CueWindow[]): number | null => {
  const values = windows.filter(({ value }) => value !== null).length;
  return 2 * values > windows.length ? middle(windows.map(({ value }) => value)) : null;
};

const middle = (values: readonly (number | null)[]): number | null => {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : median(known);
};
