// A press test written down: what the line shows at rest and under pressure, how long after each cue it
// changes, and a meter that reads at even times. No chance in it.
import type { Input } from '../../../src/core/inputs.js';
import type { PressSetup } from '../../../src/core/press/press-setup.js';
import type { Reading } from '../../../src/core/reading.js';

export type Shown = number | 'overload' | 'blank';

/** From `from` on, until `to`, the line shows this instead. */
export interface Disturbance {
  readonly from: number;
  readonly to: number;
  readonly shows: Shown;
}

export interface PressScript {
  readonly rests: Shown;
  readonly pressed: Shown;
  readonly cycles: number;
  /** Readings a second. */
  readonly rate: number;
  /** Seconds from a cue to the change; negative for a change before it. */
  readonly lagS: number;
  /** Seconds the joint keeps its pressed state after the hand let go. */
  readonly sticksS: number;
  readonly leadS: number;
  readonly pressS: number;
  readonly releaseS: number;
  /** Cycles, from 0, in which the hand does nothing. */
  readonly missed: readonly number[];
  /** Whether the last `release` that closes the last window is given. */
  readonly closing: boolean;
  readonly disturbances: readonly Disturbance[];
}

export const setup: PressSetup = {
  line: 'D0_P',
  part: 'FL2',
  normal: { low: 349, high: 427 },
  function: 'resistance',
  shortLimit: 5,
};

const plain: PressScript = {
  rests: 'overload',
  pressed: 388,
  cycles: 4,
  rate: 10,
  lagS: 0.3,
  sticksS: 0,
  leadS: 2,
  pressS: 2,
  releaseS: 2.5,
  missed: [],
  closing: true,
  disturbances: [],
};

export const readingOf = (t: number, shows: Shown): Reading => {
  const context = { t, function: 'resistance' } as const;
  if (shows === 'overload') return { ...context, overload: true };
  return shows === 'blank' ? { ...context, blank: true } : { ...context, value: shows };
};

/** A loose joint, unless the changes say otherwise. */
export const scriptedPress = (changes: Partial<PressScript> = {}): Input[] => {
  const script = { ...plain, ...changes };
  const cycleS = script.pressS + script.releaseS;
  const pressT = (cycle: number): number => script.leadS + cycle * cycleS;
  const cues: Input[] = [];
  const held: { from: number; to: number }[] = [];
  for (let cycle = 0; cycle < script.cycles; cycle += 1) {
    const t = pressT(cycle);
    const releaseT = t + script.pressS;
    cues.push({ kind: 'cue', t, cue: 'press' }, { kind: 'cue', t: releaseT, cue: 'release' });
    if (script.missed.includes(cycle)) continue;
    held.push({ from: t + script.lagS, to: releaseT + script.lagS + script.sticksS });
  }
  const endS = pressT(script.cycles);
  if (script.closing) cues.push({ kind: 'cue', t: endS, cue: 'release' });

  const inputs: Input[] = [];
  for (let n = 1; n / script.rate <= endS; n += 1) {
    const t = n / script.rate;
    const at = ({ from, to }: { from: number; to: number }): boolean => t >= from && t < to;
    const disturbed = script.disturbances.find(at);
    const shows = disturbed?.shows ?? (held.some(at) ? script.pressed : script.rests);
    inputs.push({ kind: 'reading', reading: readingOf(t, shows) });
  }
  const timeOf = (input: Input): number => (input.kind === 'reading' ? input.reading.t : input.t);
  return [...inputs, ...cues].sort((a, b) => timeOf(a) - timeOf(b));
};
