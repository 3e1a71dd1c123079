// What a recheck comes to: each pin before and after, untouched lines, places pressed again, and all of it in one
// word. Nothing is called good that was not read, and nothing at all while untouched lines have moved.
import type { EventOf } from '../events.js';
import type { MeasureFunction } from '../reading.js';
import type { WalkState } from '../walk/state.js';
import { indexOfPin } from '../walk/whereabouts.js';
import { compareReadings, isBad } from './difference.js';
import type { RecheckOutcome } from './recheck-events.js';
import { type RecheckHeader, readOf } from './recheck-header.js';

type Body = Omit<EventOf<'recheck-compared'>, 'type' | 't'>;

/** What touching a pin anew may change. Common practice, no source. */
const contactOf: Readonly<Record<MeasureFunction, number>> = {
  resistance: 0.15,
  continuity: 0.15,
  diode: 0.001,
  'dc-volts': 0.001,
};

/** One pin against what it read before; null where the recheck does not ask for it. */
export const comparePin = (
  state: WalkState,
  header: RecheckHeader,
  pin: string,
): Body['pins'][number] | null => {
  const asked = header.pins.find((known) => known.pin === pin);
  const index = indexOfPin(state, pin);
  const [planned, record] = [state.plan.pins[index], state.pins[index]];
  if (asked === undefined || planned === undefined || record === undefined) return null;
  const after = readOf(record);
  return {
    pin,
    line: planned.line,
    because: asked.because,
    before: asked.before,
    after,
    ...compareReadings(asked.before, after, contactOf[state.plan.function]),
  };
};

/** An untouched line that reads otherwise than before: to be touched again before it is believed. */
export const hasMoved = (
  header: RecheckHeader,
  measure: MeasureFunction,
  pin: string,
  read: { readonly value: number; readonly standardUncertainty: number | null },
): boolean => {
  const asked = header.pins.find((known) => known.pin === pin);
  if (asked?.because.includes('control') !== true) return false;
  const after = { verdict: 'normal', ...read } as const;
  return compareReadings(asked.before, after, contactOf[measure]).difference === 'changed';
};

export const judgeRecheck = (state: WalkState, header: RecheckHeader): Body => {
  const pins = header.pins.flatMap(({ pin }) => comparePin(state, header, pin) ?? []);
  const controls = controlsOf(pins);
  const press = header.press.map((place) => ({ ...place, outcome: pressOutcome(state, place) }));
  return { pins, controls, press, outcome: outcomeOf({ pins, controls, press }) };
};

export const isAsBefore = ({ difference }: Body['pins'][number]): boolean =>
  difference === 'unchanged';

const controlsOf = (pins: Body['pins']): Body['controls'] => {
  const controls = pins.filter(({ because }) => because.includes('control'));
  const read = controls.filter(({ difference }) => difference !== 'unknown');
  if (read.some((pin) => !isAsBefore(pin))) return 'moved';
  return controls.length > 0 && read.length === controls.length ? 'as-before' : 'unread';
};

const pressOutcome = (
  { presses }: WalkState,
  { line, part }: RecheckHeader['press'][number],
): Body['press'][number]['outcome'] => {
  const last = presses.findLast(
    (press) => press.line === line && (part === null || press.part === part),
  );
  switch (last?.finding) {
    case undefined:
      return 'not-pressed';
    case 'steady':
      return 'stays';
    case 'inconclusive':
      return 'unclear';
    case 'steady-open':
    case 'loose':
    case 'cracked':
    case 'bridged':
      return 'moves';
  }
};

const outcomeOf = ({ pins, controls, press }: Omit<Body, 'outcome'>): RecheckOutcome => {
  if (controls === 'moved') return 'wait';
  if (pins.some(({ after }) => isBad(after.verdict))) return 'bad';
  if (press.some(({ outcome }) => outcome === 'moves')) return 'bad';
  const isRead = pins.every(
    ({ after, because }) =>
      after.verdict === 'normal' || (because.length === 1 && because[0] === 'anchor'),
  );
  const isPressed = press.every(({ outcome }) => outcome === 'stays');
  return isRead && isPressed && controls === 'as-before' ? 'good' : 'incomplete';
};
