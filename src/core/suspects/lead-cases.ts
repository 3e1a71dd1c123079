// When a lead may have failed: at some observation, from which on nothing was read until the next reading that
// shows contact. At most one lead fails in the evidence; a failed lead reads overload and nothing else.
import type { Evidence, Observation } from './evidence.js';
import { comesBackShare, type Lead } from './priors.js';
import type { SuspectModel } from './suspect-model.js';
import { lookedAt } from './views.js';

export interface LeadCase {
  readonly lead: Lead | null;
  /** Observations made with the lead off, by index from `from` to before `to`. */
  readonly from: number;
  readonly to: number;
  /** The lead is off still. */
  readonly now: boolean;
  readonly prior: number;
}

/** @throws RangeError for evidence on what the model does not have. */
export const leadCases = (model: SuspectModel, evidence: Evidence): LeadCase[] => {
  const leads = Object.entries(model.leads) as [Lead, number][];
  const holds = leads.reduce((left, [, hazard]) => left - hazard, 1);
  const n = evidence.length;
  const cases: LeadCase[] = [{ lead: null, from: 0, to: 0, now: false, prior: holds ** n }];
  for (const [lead, hazard] of leads) {
    let to = n;
    for (let from = n - 1; from >= 0; from -= 1) {
      const seen = evidence[from] as Observation;
      if (!readsNothing(model, seen) || (lead === 'ground-clip' && seen.clipMoved === true)) {
        to = from;
        continue;
      }
      const mended = lead === 'ground-clip' && evidence[to]?.clipMoved === true;
      const stays = to === n || mended ? 1 : comesBackShare;
      cases.push({ lead, from, to, now: to === n, prior: holds ** from * hazard * stays });
    }
  }
  return cases;
};

/** Whether the observation is what a lead that is off would give. */
const readsNothing = (model: SuspectModel, seen: Observation): boolean => {
  if (seen.kind === 'press') return seen.finding === 'steady-open';
  const { route } = lookedAt(model, seen);
  return seen.verdict === 'open' || (seen.verdict === 'normal' && route.expected === 'overload');
};
