// Where a probe beside the walk goes: the place that is asked for, or the one proposed last.
import type { EventOf } from '../events.js';
import type { Act } from '../inputs.js';
import { standingOf } from './naming.js';
import type { WalkState } from './state.js';

type Next = NonNullable<EventOf<'suspects-ranked'>['next']>;

/** A place along a line, or a pin to be touched again, or a press test; by the names of the profile. */
export type ProbeTarget = Pick<Next, 'probe' | 'line' | 'pin' | 'part' | 'side'>;

export const probeTarget = (
  { ranked }: WalkState,
  { line, part, side }: Act,
): ProbeTarget | null => {
  if (line === undefined) {
    if (ranked?.next == null) return null;
    const { gain: _gain, effort: _effort, ...target } = ranked.next;
    return target;
  }
  return {
    probe: 'place',
    line,
    ...(part === undefined ? {} : { part }),
    side: side ?? (part === undefined ? 'chip' : 'far'),
  };
};

/** Why there can be no such probe now, in words, or null. */
export const probeRefusal = (state: WalkState, act: Act): string | null => {
  if (state.stage === 'ground-check') return 'two grounds are touched first; skip leaves that out';
  if (state.paused !== null) return 'the walk is paused';
  if (state.probing !== null) return 'a place is being probed already; dismiss ends it';
  if (state.pending.length > 0 || !standingOf(state.alignment).sure)
    return 'which pin was read last is in doubt; touch it again first';
  const target = probeTarget(state, act);
  return target === null ? 'no probe would tell more' : unknownPlace(state, target);
};

const unknownPlace = (
  { profile, plan }: WalkState,
  { probe, line, part, side }: ProbeTarget,
): string | null => {
  if (!plan.pins.some((pin) => pin.line === line))
    return `there is no line ${line} in this profile`;
  if (probe !== 'place' || side === 'chip') return null;
  const chain = profile.lines[line]?.chain ?? [];
  const isAlong =
    chain.some((stop) => 'part' in stop && stop.part === part) ||
    (chain.length === 0 && profile.parts?.[part ?? '']?.lines.includes(line) === true);
  return isAlong ? null : `line ${line} does not pass through ${part ?? 'a part without a name'}`;
};
