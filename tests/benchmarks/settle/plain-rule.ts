// The rule people use, as a yardstick: capture when the last N readings lie within x percent, step on after
// any overload followed by new contact. It is told which pins the technician touches twice, which no real
// rule knows, so that its figures are better than at the bench, never worse.
import type { Input } from '../../../src/core/inputs.js';
import { isOverload, isValue } from '../../../src/core/reading.js';
import { rightVerdicts } from './judge-truth.js';
import type { ScoredEvent } from './scored-event.js';
import type { GeneratedWalk } from './walk-truth.js';

export interface PlainSetting {
  readonly readings: number;
  /** Largest less smallest of them, in percent of their mean. */
  readonly percent: number;
}

const within = (values: readonly number[], percent: number): boolean => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.max(...values) - Math.min(...values) <= (percent / 100) * mean;
};

export const plainRule = (
  walk: Pick<GeneratedWalk, 'profile' | 'pins' | 'inputs'>,
  { readings, percent }: PlainSetting,
): readonly ScoredEvent[] => {
  const events: ScoredEvent[] = [];
  const measure = walk.profile.measure.function;
  let at = 0;
  let touchesLeft = walk.pins[0]?.ends === 'two-touches' ? 2 : 1;
  let waitsForLift = false;
  let last: number[] = [];

  const capture = (t: number, value: number | null): void => {
    const truth = walk.pins[at];
    const line = truth && walk.profile.lines[truth.line];
    if (truth === undefined || line === undefined) return;
    const verdict =
      line.kind === 'ground' && value !== null ? 'normal' : rightVerdicts(line, measure, value)[0];
    const found = value === null ? { overload: true as const } : { value };
    events.push({ type: 'pin-settled', t, pin: truth.pin, ...found });
    events.push({ type: 'pin-judged', t, pin: truth.pin, verdict: verdict ?? 'unread' });
  };
  const stepOn = (): void => {
    at += 1;
    touchesLeft = walk.pins[at]?.ends === 'two-touches' ? 2 : 1;
  };
  const act = (t: number, name: string): void => {
    if (name === 'open') {
      capture(t, null);
      stepOn();
    } else if (name === 'next' && !waitsForLift) {
      stepOn();
      waitsForLift = true;
    }
    last = [];
  };
  const read = (input: Extract<Input, { kind: 'reading' }>): void => {
    const { reading } = input;
    if (isOverload(reading)) {
      waitsForLift = false;
      last = [];
    }
    if (!isValue(reading) || waitsForLift || at >= walk.pins.length) return;
    last = [...last.slice(1 - readings), reading.value];
    if (last.length < readings || !within(last, percent)) return;
    capture(reading.t, last.reduce((sum, value) => sum + value, 0) / last.length);
    waitsForLift = true;
    last = [];
    touchesLeft -= 1;
    if (touchesLeft === 0) stepOn();
  };

  for (const input of walk.inputs) {
    if (input.kind === 'act') act(input.t, input.act.act);
    else if (input.kind === 'reading') read(input);
  }
  return events;
};

export const plainGrid: readonly PlainSetting[] = [2, 3, 4, 5, 8, 12, 16, 25, 40].flatMap(
  (readings) => [0.2, 0.5, 1, 2, 4].map((percent) => ({ readings, percent })),
);
