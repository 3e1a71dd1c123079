// Random evidence on a small board: touches of its pins, looks along its lines and presses, in any order.
import fc from 'fast-check';
import { pressFindings } from '../../../src/core/press/decide-press.js';
import type { Observation } from '../../../src/core/suspects/evidence.js';
import { lookOf, probesOn } from '../../../src/core/suspects/probes.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { verdicts } from '../../../src/core/verdict.js';

/** Half of the touches read nothing, so that leads and shared faults come into question. */
const verdict = fc.oneof(fc.constant('open' as const), fc.constantFrom(...verdicts));
const finding = fc.oneof(fc.constant('loose' as const), fc.constantFrom(...pressFindings));

export const randomEvidence = (model: SuspectModel): fc.Arbitrary<Observation[]> => {
  const looks = model.routes.flatMap((route) => probesOn(model, route)).map(lookOf);
  return fc.array(
    fc
      .tuple(fc.constantFrom(...looks), verdict, finding, fc.boolean())
      .map(([look, read, found, clipMoved]): Observation => {
        if (look.kind === 'press') return { ...look, finding: found };
        return { ...look, verdict: read, ...(clipMoved ? { clipMoved } : {}) };
      }),
    { minLength: 1, maxLength: 6 },
  );
};
