// A line that goes on creeping under the probe after its capture: what it has come to counts. The capture is told
// again under its own number.
import type { EventOf } from '../events.js';
import { captureUncertainty } from './capture-uncertainty.js';
import { resolutionAt } from './display-step.js';
import { noiseAt } from './noise.js';
import { watched } from './rest.js';
import type { WalkState } from './state.js';

/** A captured level that moved by this much (fraction) is revised, once it moves no more than that. */
export const revisedFrom = 0.007;
const flatWithin = 0.003;

/** The latest capture as it reads by now, where that is another value; else null. */
export const revisedCapture = (state: WalkState): EventOf<'touch-captured'> | null => {
  const { contact, latest, noise, reading, accuracy, t } = state;
  const { rest } = contact;
  if (rest === null || rest.of === null || latest?.capture !== rest.of) return null;
  const seen = watched(rest);
  if (seen === null) return null;
  const { mean, change, n } = seen;
  const resolution = resolutionAt(state, mean);
  const scatter = noiseAt(noise, mean, resolution) / Math.sqrt(n);
  const size = Math.abs(mean);
  const moved = Math.abs(mean - rest.captured);
  if (moved <= Math.max(revisedFrom * size, 2 * resolution, 4 * scatter)) return null;
  if (Math.abs(change) > Math.max(flatWithin * size, resolution) + 3 * scatter) return null;
  const range = reading !== null && 'range' in reading ? reading.range : undefined;
  const deviation = Math.hypot(scatter, change);
  return {
    type: 'touch-captured',
    t,
    touch: rest.of,
    value: mean,
    standardUncertainty: captureUncertainty(accuracy, {
      value: mean,
      range,
      resolution,
      deviation,
      leads: state.leads,
    }),
    deviation,
    residualSquares: 0,
    readings: n,
    ...(range === undefined ? {} : { range }),
    resolution,
    from: rest.from,
    to: rest.lastT,
  };
};
