// What may be at fault, from every verdict and press finding of the session. Told once, when the session is
// closed: the exact posterior takes longer than a reading may wait.
import { shamPlace } from '../press/press-stage.js';
import { buildModel } from '../suspects/build-model.js';
import type { Evidence } from '../suspects/evidence.js';
import { suspectsRanked } from '../suspects/suspects-ranked.js';
import { weighFaults } from '../suspects/weigh-faults.js';
import type { WalkState } from './state.js';
import type { Teller } from './teller.js';

export const tellSuspects = (teller: Teller, t: number): void => {
  const { profile, plan, pins } = teller.state;
  const isSuspicious = pins.some(({ verdict }) => verdict !== 'normal' && verdict !== 'unread');
  if (!isSuspicious) return;
  const { function: measure, polarity } = plan;
  const model = buildModel(profile, { measure: { function: measure, polarity } });
  teller.tell({
    type: 'suspects-ranked',
    t,
    ...suspectsRanked(weighFaults(model, evidenceOf(teller.state))),
  });
};

const evidenceOf = ({ plan, pins, presses }: WalkState): Evidence => [
  ...plan.pins.map(({ pin, index }) => ({
    kind: 'pin' as const,
    pin,
    verdict: pins[index]?.verdict ?? 'unread',
  })),
  ...presses.flatMap(({ line, part, finding }) =>
    part === null || part === shamPlace ? [] : [{ kind: 'press' as const, line, part, finding }],
  ),
];
