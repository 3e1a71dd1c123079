// One press test from a seed: a hand, a joint, a probe and a meter, cued live by the test itself.
import type { Input } from '../../../src/core/inputs.js';
import { paceFor } from '../../../src/core/press/pace.js';
import type { PressResult } from '../../../src/core/press/press-result.js';
import type { PressSetup } from '../../../src/core/press/press-setup.js';
import { createPressTest, nextCue, pressStep } from '../../../src/core/press/press-test.js';
import { drawsNeeded, planCues } from '../../../src/core/press/schedule.js';
import { isValue } from '../../../src/core/reading.js';
import { type Random, seeded } from '../shared/random.js';
import { type Change, drawMeter, readMeter } from './bench-meter.js';
import type { PressKind } from './press-kinds.js';
import { answerCue, drawHand, jointOf } from './pressed-joint.js';
import { drawSlipping, drawSlips, type Slip, type SlippingLine, type SlipStyle } from './slips.js';

export interface PressTrial {
  readonly kind: PressKind;
  readonly rate: number;
  readonly setup: PressSetup;
  readonly inputs: readonly Input[];
  readonly result: PressResult;
  /** The naive rule: any normal reading after the first cue means loose. */
  readonly naive: 'loose' | 'not loose';
  readonly lastsS: number;
}

export interface TrialLaws {
  readonly rate?: number;
  readonly style?: SlipStyle;
  readonly slipping?: (random: Random, endS: number, value: number) => SlippingLine;
}

/** Longer than any test. */
const probeEndS = 120;

export const runPressTrial = (kind: PressKind, seed: string, laws: TrialLaws = {}): PressTrial => {
  const random = seeded(seed);
  const rate = laws.rate ?? random.logUniform([2.5, 50]);
  const contact = random.logUniform([30, 20_000]);
  const values = { contact, short: random.uniform([0.05, 3]) };
  const normal = { low: contact * 0.9, high: contact * 1.1 };
  const probe = drawProbe(kind, random.fork('probe'), contact, laws);
  const joint = jointOf(kind, probe.rests);
  const hand = drawHand(random.fork('hand'));
  const meter = drawMeter(random.fork('meter'), rate, contact);
  const noise = random.fork('noise');
  const answers = random.fork('answers');
  const jitter = random.fork('jitter');
  const draws = Array.from({ length: drawsNeeded }, () => jitter.unit());
  const plan = planCues(paceFor(1 / rate), 0, draws);

  const setup: PressSetup = {
    line: 'L1',
    part: 'P1',
    normal,
    function: 'resistance',
    shortLimit: 5,
  };
  let state = createPressTest(setup);
  const inputs: Input[] = [];
  const feed = (input: Input): PressResult | undefined => {
    inputs.push(input);
    const step = pressStep(state, input);
    state = step.state;
    return step.result;
  };
  const line: Change[] = [{ t: Number.NEGATIVE_INFINITY, condition: joint.rests, value: contact }];
  let fromS = 0;
  for (const [place, planned] of plan.entries()) {
    const changes = withSlips(line, probe.slips, planned.t);
    for (const reading of readMeter(meter, changes, fromS, planned.t, noise))
      feed({ kind: 'reading', reading });
    fromS = planned.t;
    const cue = place === plan.length - 1 ? 'release' : nextCue(state, planned.t);
    const result = feed({ kind: 'cue', t: planned.t, cue });
    if (result !== undefined) {
      return {
        kind,
        rate,
        setup,
        inputs,
        result,
        naive: naiveRule(inputs, normal),
        lastsS: planned.t,
      };
    }
    const nextT = plan[place + 1]?.t ?? planned.t;
    line.push(...answerCue(joint, hand, answers, { cue, t: planned.t, nextT }, values));
  }
  throw new RangeError('a plan ends with a closing release');
};

const drawProbe = (
  kind: PressKind,
  random: Random,
  value: number,
  laws: TrialLaws,
): SlippingLine => {
  if (kind === 'slipping') {
    return (
      laws.slipping?.(random, probeEndS, value) ??
      drawSlipping(random, probeEndS, value, laws.style)
    );
  }
  // Even a good hand slips now and then.
  const perS = random.uniform([0, 0.02]);
  const condition = kind === 'steady-open' ? 'contact' : 'open';
  const slips =
    perS === 0 ? [] : drawSlips(random, probeEndS, { perS, lastsS: [0.05, 0.4], condition, value });
  return { rests: 'open', slips };
};

/** The line's changes with the probe's slips laid over them, as far as they begin before `endS`. */
const withSlips = (line: readonly Change[], slips: readonly Slip[], endS: number): Change[] => {
  const begun = slips.filter(({ from }) => from <= endS);
  const merged = line.filter(({ t }) => !begun.some(({ from, to }) => t >= from && t < to));
  for (const { from, to, condition, value } of begun) {
    merged.push({ t: from, condition, value });
    const under = line.findLast(({ t }) => t <= to) ?? line[0];
    if (under !== undefined) merged.push({ ...under, t: to });
  }
  return merged.sort((a, b) => a.t - b.t);
};

const naiveRule = (
  inputs: readonly Input[],
  normal: { low: number; high: number },
): 'loose' | 'not loose' => {
  const first = inputs.findIndex(({ kind }) => kind === 'cue');
  const isNormal = inputs
    .slice(first)
    .some(
      (input) =>
        input.kind === 'reading' &&
        isValue(input.reading) &&
        input.reading.value >= normal.low &&
        input.reading.value <= normal.high,
    );
  return isNormal ? 'loose' : 'not loose';
};
