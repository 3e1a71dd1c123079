// Decides after each cycle whether the line answers the presses. An unclear window counts against whatever
// would be found; a futile test stops. Refuses more cycles than the design has.
import { oneSidedP } from './look-table.js';
import type { PressCycle } from './press-cycle.js';
import { answersNeeded, decisiveP, fewestCycles, mostCycles } from './press-design.js';
import type { Side } from './sides.js';

export const pressFindings = [
  'loose',
  'cracked',
  'bridged',
  'steady-open',
  'steady',
  'inconclusive',
] as const;
export type PressFinding = (typeof pressFindings)[number];

export interface PressDecision {
  readonly finding: PressFinding;
  /** The rule stops here: the evidence is enough, or cannot come. */
  readonly stops: boolean;
  /** Raw and one-sided, for the pattern that fits best. */
  readonly pValue: number;
  /** Cycles that fit that pattern with both edges in their zones. */
  readonly answered: number;
}

/** What a joint that answers shows: a side under pressure, and another one without. */
interface Pattern {
  readonly finding: 'loose' | 'cracked' | 'bridged';
  readonly pressed: Side;
  readonly released: Side;
}

const patterns: readonly Pattern[] = [
  { finding: 'loose', pressed: 'normal', released: 'above' },
  { finding: 'cracked', pressed: 'above', released: 'normal' },
  { finding: 'bridged', pressed: 'below', released: 'normal' },
  // A short that clears under pressure is a bridge as well, lifted instead of closed.
  { finding: 'bridged', pressed: 'normal', released: 'below' },
];

/**
 * The decision after the cycles so far: Fisher's exact test over the windows (design 6.6), both edges of
 * enough cycles in their answer zones, looks after each cycle from the fourth to the eighth.
 * Values are to have been compared before (see `agreeing`).
 * @throws RangeError for more than eight cycles.
 */
export const decidePress = (cycles: readonly PressCycle[], lagBandS: number): PressDecision => {
  const n = cycles.length;
  if (n > mostCycles) throw new RangeError(`the test ends after ${mostCycles} cycles, not ${n}`);
  const fits = patterns.map((pattern) => fitOf(pattern, cycles, lagBandS));
  const best = fits.reduce((a, b) => (b.pValue < a.pValue ? b : a));
  const evidence = { pValue: best.pValue, answered: best.answered };
  if (n < fewestCycles) return { finding: 'inconclusive', stops: false, ...evidence };

  const found = fits.find(
    ({ pValue, answered }) => pValue <= decisiveP && answered >= answersNeeded(n),
  );
  if (found !== undefined) {
    const { pattern, pValue, answered } = found;
    return { finding: pattern.finding, stops: true, pValue, answered };
  }
  const mayAnswer = fits.some((fit) => canStillCome(fit, n));
  const steady = steadiness(cycles);
  if (!mayAnswer && steady.strays <= strayShare * 2 * n) {
    return { finding: steady.finding, stops: true, ...evidence };
  }
  const mayBeSteady = steady.strays <= strayShare * 2 * mostCycles;
  return {
    finding: 'inconclusive',
    stops: n === mostCycles || !(mayAnswer || mayBeSteady),
    ...evidence,
  };
};

interface Fit {
  readonly pattern: Pattern;
  /** Press windows that fit, and release windows that do not. */
  readonly pressed: number;
  readonly released: number;
  readonly answered: number;
  readonly pValue: number;
}

const fitOf = (pattern: Pattern, cycles: readonly PressCycle[], lagBandS: number): Fit => {
  const pressed = cycles.filter(({ press }) => press.side === pattern.pressed).length;
  const released = cycles.filter(({ release }) => release.side !== pattern.released).length;
  const lags = cycles.flatMap(({ press, release, releaseSeen }) =>
    press.side === pattern.pressed &&
    press.locked &&
    press.answerS !== null &&
    release.side === pattern.released &&
    (release.locked || !releaseSeen)
      ? [press.answerS]
      : [],
  );
  return {
    pattern,
    pressed,
    released,
    answered: mostWithin(lags, lagBandS),
    pValue: oneSidedP(cycles.length, pressed, released),
  };
};

/** The most lags that lie within one band of the given width. */
const mostWithin = (lags: readonly number[], widthS: number): number =>
  Math.max(
    0,
    ...lags.map((from) => lags.filter((lag) => lag >= from && lag <= from + widthS).length),
  );

/** Whether the pattern could still be found if every cycle to come fitted it. */
const canStillCome = ({ pressed, released, answered }: Fit, n: number): boolean => {
  for (let at = n + 1; at <= mostCycles; at += 1) {
    const more = at - n;
    const p = oneSidedP(at, pressed + more, released);
    if (p <= decisiveP && answered + more >= answersNeeded(at)) return true;
  }
  return false;
};

/** At most one window in ten may stray from a line that is called steady: a slip, a stray touch. */
const strayShare = 0.1;

const steadiness = (
  cycles: readonly PressCycle[],
): { finding: 'steady' | 'steady-open'; strays: number } => {
  const windows = cycles.flatMap(({ press, release }) => [press, release]);
  const on = (side: Side): number => windows.filter((window) => window.side === side).length;
  const overloads = windows.filter((window) => window.side !== null && window.overload).length;
  const most = Math.max(on('normal'), on('above'), on('below'));
  return {
    finding: 2 * overloads > windows.length ? 'steady-open' : 'steady',
    strays: windows.length - most,
  };
};
