// One connector over many hours at fifty readings a second: a generated walk whose pins are held that much longer.
import type { Input } from '../../../src/core/inputs.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { generateWalk } from '../../benchmarks/settle/generate-walk.js';
import type { Mixture } from '../../benchmarks/settle/mixture.js';
import { common } from '../../benchmarks/settle/mixtures/common.js';

const pins = 60;
const readingsPerS = 50;

/** At least so many readings; most of them air and rest, as in any long log. */
export const longWalk = (
  readings: number,
): { readonly profile: Profile; readonly inputs: readonly Input[] } => {
  const pinS = readings / readingsPerS / pins;
  const mixture: Mixture = {
    ...common,
    board: { ...common.board, pins: [pins, pins] },
    hand: { ...common.hand, liftMeanS: 0.4 * pinS, marginS: [0.3 * pinS, 0.8 * pinS] },
    meter: { ...common.meter, rates: [readingsPerS], bursts: 0 },
  };
  return generateWalk(mixture, 1, 0);
};
