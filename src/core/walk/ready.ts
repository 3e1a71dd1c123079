// What is done with the leads before the first ground is touched: they are zeroed on one another, and a known part
// is read, so that no board is judged with a meter that is off. Each step can be left out.
import { checkReference } from '../context/check-reference.js';
import { type LeadZeroOutcome, leadZero } from '../context/lead-zero.js';
import { inferResolution } from '../measure/accuracy-row.js';
import { mean } from '../numbers/mean.js';
import { sampleStandardDeviation } from '../numbers/sample-standard-deviation.js';
import type { ValueReading } from '../reading.js';
import type { WalkState } from './state.js';
import { tellPlace } from './tell.js';
import type { Teller } from './teller.js';

/** A contact is looked at after so long; one that will not do is refused after the longer time. Seconds. */
const heldS = 1;
const patienceS = 3;
const windowS = 1.5;
const leastReadings = 5;

/** Says what is to be done next, or goes on to the walk. */
export const goOnReady = (teller: Teller, t: number): void => {
  const [step] = teller.state.readyNext;
  if (step !== undefined) teller.tell({ type: 'ready-asked', t, step });
  else if (teller.state.stage === 'walking') tellPlace(teller, t, true);
};

export const stepReady = (teller: Teller, t: number): void => {
  const { ready } = teller.state;
  if (ready === null || ready.refused) return;
  // The first reading may have begun before the tips met.
  const [first, ...seen] = ready.seen;
  const last = seen.at(-1);
  if (first === undefined || last === undefined || last.t - first.t < heldS) return;
  const since = last.t - windowS;
  const window = seen.slice(
    -Math.max(leastReadings, seen.filter((reading) => reading.t >= since).length),
  );
  if (window.length < leastReadings) return;
  const waitsOn = last.t - first.t < patienceS;
  if (ready.step === 'lead-zero')
    tellZero(teller, t, leadZero(window, teller.state.accuracy), waitsOn);
  else tellReference(teller, t, window, waitsOn);
};

const tellZero = (teller: Teller, t: number, outcome: LeadZeroOutcome, waitsOn: boolean): void => {
  if (outcome.ok) {
    teller.tell({ type: 'lead-zeroed', t, ...outcome.zero });
    goOnReady(teller, t);
  } else if (!waitsOn) {
    teller.tell({ type: 'lead-zero-refused', t, refused: outcome.refused });
  }
};

const tellReference = (
  teller: Teller,
  t: number,
  window: readonly ValueReading[],
  waitsOn: boolean,
): void => {
  const { reference: known, accuracy, plan } = teller.state;
  if (known === null) return;
  const observed = observedIn(teller.state, window);
  const outcome = checkReference(observed, known, accuracy, plan.function);
  if (!outcome.ok && waitsOn) return;
  const { value, standardUncertainty } = observed;
  teller.tell({ type: 'reference-checked', t, known, value, standardUncertainty, outcome });
  if (outcome.ok) goOnReady(teller, t);
};

const observedIn = (
  { leads, accuracy, plan }: WalkState,
  window: readonly ValueReading[],
): {
  value: number;
  standardUncertainty: number;
  resolution: number;
  range?: number;
} => {
  const values = window.map(({ value }) => value);
  const { range, resolution } = window.at(-1) as ValueReading;
  const scatter = sampleStandardDeviation(values) / Math.sqrt(values.length);
  const read = mean(values);
  return {
    value: read - (leads?.ohms ?? 0),
    standardUncertainty: Math.hypot(scatter, leads?.standardUncertainty ?? 0),
    resolution: resolution ?? inferResolution(accuracy, plan.function, read, range),
    ...(range === undefined ? {} : { range }),
  };
};
