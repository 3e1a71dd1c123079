// The header of a recheck: what was read before, why each pin is walked again, and which places are pressed again.
import type { EventOf } from '../events.js';
import { shamPlace } from '../press/press-stage.js';
import type { ReworkState } from '../rework/rework-state.js';
import { patientAlone } from '../walk/patient.js';
import type { PinRecord, WalkState } from '../walk/state.js';
import { chooseRecheckPins } from './choose-pins.js';
import type { Read } from './difference.js';

export type RecheckHeader = NonNullable<EventOf<'session-opened'>['recheck']>;

/** Null where nothing was read that could be compared. */
export const recheckHeader = (
  walked: WalkState,
  rework: ReworkState,
  of: RecheckHeader['of'],
): RecheckHeader | null => {
  const state = patientAlone(walked);
  const chosen = chooseRecheckPins(state, rework);
  if (chosen.length === 0) return null;
  return {
    of,
    pins: chosen.map(({ planned, record, because }) => ({
      pin: planned.pin,
      because: [...because],
      before: readOf(record),
    })),
    shifts: { signal: state.shifts.signal, supply: state.shifts.supply },
    press: toPressAgain(state, new Set(chosen.map(({ planned }) => planned.line))),
  };
};

export const readOf = (record: PinRecord): Read => ({
  verdict: record.verdict,
  ...(record.value === null ? {} : { value: record.value }),
  ...(record.overload ? { overload: true as const } : {}),
  standardUncertainty: record.standardUncertainty,
});

const toPressAgain = (
  { presses }: WalkState,
  lines: ReadonlySet<string>,
): RecheckHeader['press'] => {
  const found = presses.filter(
    ({ line, part, finding }) =>
      lines.has(line) &&
      part !== shamPlace &&
      (finding === 'loose' || finding === 'cracked' || finding === 'bridged'),
  );
  return found
    .filter(
      ({ line, part }, at) =>
        found.findIndex((other) => other.line === line && other.part === part) === at,
    )
    .map(({ line, part }) => ({ line, part }));
};
