// The probes worth their effort, the best first: which tells most about the places at fault, in bits for its effort. The gain
// is the mutual information between what the probe finds and the places at fault on its line (Shannon 1948, from
// memory), computed from the exact posterior without assuming what will be found.
import { outlookOf } from './outlook.js';
import {
  doubtOf,
  type Posterior,
  type RoutePosterior,
  type Slice,
  visitCases,
} from './posterior.js';
import { defaultEffort, type EffortOf, effortFor, lookOf, type Probe, probesOn } from './probes.js';
import type { SeatedFault } from './sight.js';
import type { SuspectModel } from './suspect-model.js';

interface ProposedProbe {
  readonly probe: Probe;
  /** Bits expected about which places are at fault. */
  readonly gain: number;
  readonly effort: number;
}

type Effort = Readonly<Record<EffortOf, number>>;

/** Below this many bits a probe is not worth its effort. Common practice, no source. */
const defaultLeastGain = 0.02;
/** Lines are looked at only while they are this likely to be at fault. */
const leastDoubt = 0.02;
/** At most so many lines, those most in doubt: a lead that is off puts all of them in doubt alike. */
const mostRoutes = 8;
/** Cases less likely than this are left out of the sum. */
const leastShare = 1e-7;

/**
 * All probes worth their effort, the best first: that one is the next to propose.
 * @throws RangeError for an effort that is not positive.
 */
export const rankProbes = (
  posterior: Posterior,
  effort: Effort = defaultEffort,
  leastGain = defaultLeastGain,
): readonly ProposedProbe[] => {
  for (const [name, one] of Object.entries(effort))
    if (!(one > 0))
      throw new RangeError(`the effort of a probe must be above 0: ${name} is ${one}`);
  return doubtfulRoutes(posterior)
    .flatMap((route) => gainsOn(posterior.model, route))
    .filter(({ gain }) => gain >= leastGain)
    .map(({ probe, gain }) => ({ probe, gain, effort: effort[effortFor(probe)] }))
    .sort((a, b) => b.gain / b.effort - a.gain / a.effort);
};

/** Lines that were looked at and are not known to be sound, those most in doubt first. */
const doubtfulRoutes = ({ routes }: Posterior): RoutePosterior[] =>
  routes
    .map((route) => ({ route, doubt: route.isSeen ? doubtOf(route) : 0 }))
    .filter(({ doubt }) => doubt >= leastDoubt)
    .sort((a, b) => b.doubt - a.doubt)
    .slice(0, mostRoutes)
    .map(({ route }) => route);

interface LikelyCase {
  /** Which places are at fault and which lead is off, as the row of a table. */
  readonly row: number;
  readonly faults: readonly SeatedFault[];
  readonly flexes: boolean | null;
  readonly now: Slice['now'];
  readonly probability: number;
}

const gainsOn = (model: SuspectModel, route: RoutePosterior): { probe: Probe; gain: number }[] => {
  const rows = new Map<string, number>();
  const likely: LikelyCase[] = [];
  visitCases(route, ({ suspects, faults, flexes }, { now }, probability) => {
    if (probability < leastShare) return;
    const key = `${now} ${suspects.join()}`;
    const row = rows.get(key) ?? rows.size;
    rows.set(key, row);
    likely.push({ row, faults, flexes, now, probability });
  });
  return probesOn(model, route.cases.route).map((probe) => ({
    probe,
    gain: expectedGain(model, probe, likely, rows.size),
  }));
};

const expectedGain = (
  model: SuspectModel,
  probe: Probe,
  likely: readonly LikelyCase[],
  rowCount: number,
): number => {
  const { outcomes, leadOff, given } = outlookOf(model, lookOf(probe));
  const nothingRead = outcomes.map((outcome) => (outcome === leadOff ? 1 : 0));
  const joint = Array.from({ length: rowCount }, () => outcomes.map(() => 0));
  for (const { row, faults, flexes, now, probability } of likely) {
    const isOff = now !== null && !(now === 'ground-clip' && probe.probe === 'other-ground');
    const found = isOff ? nothingRead : given(faults, flexes);
    const cells = joint[row] as number[];
    found.forEach((likelihood, at) => {
      cells[at] = (cells[at] as number) + probability * likelihood;
    });
  }
  return mutualInformation(joint);
};

/** In bits, of a table of joint probabilities. Rows need not sum to 1. */
const mutualInformation = (rows: readonly (readonly number[])[]): number => {
  const columns = (rows[0] ?? []).map((_, at) =>
    rows.reduce((sum, row) => sum + (row[at] ?? 0), 0),
  );
  const all = columns.reduce((sum, column) => sum + column, 0);
  let bits = 0;
  for (const row of rows) {
    const whole = row.reduce((sum, cell) => sum + cell, 0);
    row.forEach((cell, at) => {
      if (cell > 0)
        bits += (cell / all) * Math.log2((cell * all) / (whole * (columns[at] as number)));
    });
  }
  return Math.max(0, bits);
};
