// The ranking as the body of its event: what is likely enough to be worth a line, and the next best probe.
import type { EventOf } from '../events.js';
import type { Posterior } from './posterior.js';
import type { Probe } from './probes.js';
import { rankProbes } from './rank-probes.js';
import { rankSuspects } from './rank-suspects.js';

export type SuspectsRanked = Omit<EventOf<'suspects-ranked'>, 'type' | 't' | 'quiet'>;

/** Suspects below this are left out: an unread board would list all its joints. */
const leastShown = 0.02;
const mostShown = 12;

export const suspectsRanked = (posterior: Posterior): SuspectsRanked => {
  const { none, other } = posterior;
  const [best] = rankProbes(posterior);
  return {
    suspects: rankSuspects(posterior, leastShown)
      .slice(0, mostShown)
      .map(({ where, id, lines, probability }) => ({ where, id, lines: [...lines], probability })),
    none,
    other,
    next:
      best === undefined ? null : { ...namesOf(best.probe), gain: best.gain, effort: best.effort },
  };
};

type ProbeNames = Pick<
  NonNullable<SuspectsRanked['next']>,
  'probe' | 'line' | 'pin' | 'part' | 'side'
>;

const namesOf = (probe: Probe): ProbeNames => {
  if (probe.probe !== 'place') return probe;
  const { line, place } = probe;
  const { side } = place;
  return { probe: 'place', line, side, ...(side === 'chip' ? {} : { part: place.part }) };
};
