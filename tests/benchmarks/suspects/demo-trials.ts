// One fault on the demo board, a walk that finds it, and probes until the cause is nine tenths certain or no probe
// is worth its effort. Probes miss, verdicts err and boards flex as the model says they do.

import type { Profile } from '../../../src/core/profile/profile-format.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { Observation } from '../../../src/core/suspects/evidence.js';
import type { FaultMode } from '../../../src/core/suspects/fault-modes.js';
import { outlookOf } from '../../../src/core/suspects/outlook.js';
import {
  defaultEffort,
  effortFor,
  lookOf,
  type Probe,
  probesOn,
} from '../../../src/core/suspects/probes.js';
import { rankProbes } from '../../../src/core/suspects/rank-probes.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { type Look, lookedAt } from '../../../src/core/suspects/views.js';
import { faultWeigher } from '../../../src/core/suspects/weigh-faults.js';
import type { Verdict } from '../../../src/core/verdict.js';
import { observedBy } from '../../support/observed-by.js';
import { type Random, seeded } from '../shared/random.js';
import { causesOf, nameOf } from './causes-of.js';
import { counted } from './compare-rules.js';

export const demoRules = ['in order', 'proposed', 'proposed, all efforts alike'] as const;
export type DemoRule = (typeof demoRules)[number];

export interface DemoResult {
  readonly probes: number;
  readonly effort: number;
  readonly first: number;
  readonly amongThree: number;
}

const efforts = { proposed: defaultEffort, 'proposed, all efforts alike': counted } as const;
const certainEnough = 0.9;
const mostProbes = 15;

interface Truth {
  readonly suspect: number;
  readonly mode: FaultMode;
  /** Pressing anywhere acts on the whole line. */
  readonly flexes: boolean;
}

export const tryDemo = (
  profile: Profile,
  rule: DemoRule,
  trials: number,
  seed: string,
): DemoResult => {
  const model = buildModel(profile);
  const weigh = faultWeigher(model);
  const sums = { probes: 0, effort: 0, first: 0, amongThree: 0 };
  for (let i = 0; i < trials; i += 1) {
    const random = seeded(`${seed}/demo/${i}`);
    const truth = drawTruth(model, random);
    const end = isolate(model, weigh, truth, rule, random);
    sums.probes += end.probes;
    sums.effort += end.effort;
    sums.first += end.place === 0 ? 1 : 0;
    sums.amongThree += end.place >= 0 && end.place < 3 ? 1 : 0;
  }
  return {
    probes: sums.probes / trials,
    effort: sums.effort / trials,
    first: sums.first / trials,
    amongThree: sums.amongThree / trials,
  };
};

/** A fault that opens its line at rest, so that the walk can find it; drawn by its prior. */
const drawTruth = ({ suspects, noise }: SuspectModel, random: Random): Truth => {
  const flexes = random.chance(noise.flexes);
  const open = suspects.flatMap(({ index, where, lines, modes }) =>
    where === 'other' || lines.includes('GND')
      ? []
      : modes.flatMap(({ mode, prior }) =>
          mode === 'broken' || mode === 'loose' ? [{ suspect: index, mode, flexes, prior }] : [],
        ),
  );
  let left = random.unit() * open.reduce((sum, { prior }) => sum + prior, 0);
  for (const truth of open) {
    left -= truth.prior;
    if (left <= 0) return truth;
  }
  return open.at(-1) as Truth;
};

const isolate = (
  model: SuspectModel,
  weigh: ReturnType<typeof faultWeigher>,
  truth: Truth,
  rule: DemoRule,
  random: Random,
) => {
  const evidence: Observation[] = model.routes
    .flatMap(({ pins }) => pins)
    .map((pin) => ({
      kind: 'pin',
      pin,
      verdict: draw(model, { kind: 'pin', pin }, truth, random) as Verdict,
    }));
  const wanted = model.suspects[truth.suspect];
  const route = model.routes.find((known) => known.line === wanted?.lines[0]);
  if (wanted === undefined || route === undefined) throw new Error('the fault is on no line');
  const queue = probesOn(model, route).filter(
    ({ probe }) => probe === 'place' || probe === 'press',
  );
  let probes = 0;
  let effort = 0;
  for (;;) {
    const posterior = weigh(evidence);
    const causes = causesOf(posterior, route.index);
    const [likeliest] = causes;
    const isCertain = (likeliest?.probability ?? 0) >= certainEnough && likeliest?.cause !== null;
    const next: Probe | undefined =
      rule === 'in order' ? queue[probes] : rankProbes(posterior, efforts[rule])[0]?.probe;
    if (isCertain || next === undefined || probes === mostProbes) {
      return { probes, effort, place: causes.findIndex(({ cause }) => cause === nameOf(wanted)) };
    }
    evidence.push(observedBy(next, draw(model, lookOf(next), truth, random)));
    probes += 1;
    effort += defaultEffort[effortFor(next)];
  }
};

/** What the look finds, drawn by its probability. */
const draw = (model: SuspectModel, look: Look, truth: Truth, random: Random): string => {
  const { route } = lookedAt(model, look);
  const { outcomes, given } = outlookOf(model, look);
  const faults = route.seats
    .filter(({ suspect }) => suspect === truth.suspect)
    .map((seat) => ({ seat, mode: truth.mode }));
  let left = random.unit();
  const likely = given(faults, truth.flexes);
  for (const [at, outcome] of outcomes.entries()) {
    left -= likely[at] ?? 0;
    if (left <= 0) return outcome;
  }
  return outcomes[0] as string;
};
