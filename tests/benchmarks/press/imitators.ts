// The probes hardest to tell from a hand: rhythms at the test's own pace, and memoryless switching. They slip
// without knowing the cues, so whatever is found on them is false.
import { paceFor } from '../../../src/core/press/pace.js';
import { type Proportion, proportion } from '../shared/proportion.js';
import { runPressTrial } from './generate-press.js';
import { isFalseAlarm } from './press-kinds.js';
import { drawTurns } from './slips.js';

export interface Imitator {
  readonly name: string;
  readonly rate: number;
  readonly periodS: number;
  /** 1 for memoryless switching, small for a steady rhythm. */
  readonly spread: number;
}

/** Seconds from one press cue to the next, on average. */
const meanCycleS = (rate: number): number => {
  const { press, release } = paceFor(1 / rate);
  return (press.shortestS + press.longestS + release.shortestS + release.longestS) / 2;
};

export const imitators = (rates: readonly number[]): Imitator[] =>
  rates.flatMap((rate) =>
    [
      { of: 0.8, spread: 0.05 },
      { of: 0.9, spread: 0.05 },
      { of: 1, spread: 0.05 },
      { of: 1.1, spread: 0.05 },
      { of: 1, spread: 0.2 },
      { of: 1, spread: 1 },
      { of: 0.5, spread: 1 },
    ].map(({ of, spread }) => {
      const periodS = of * meanCycleS(rate);
      const manner = spread === 1 ? 'memoryless, mean period' : `rhythm, spread ${spread}, period`;
      return {
        name: `${rate} readings/s, ${manner} ${periodS.toFixed(1)} s`,
        rate,
        periodS,
        spread,
      };
    }),
  );

/** False alarms of one imitator. */
export const tryImitator = (imitator: Imitator, trials: number, seed: string): Proportion => {
  const { name, rate, periodS, spread } = imitator;
  let falseAlarms = 0;
  for (let i = 0; i < trials; i += 1) {
    const { result } = runPressTrial('slipping', `${seed}/${name}/${i}`, {
      rate,
      slipping: (random, endS, value) => {
        const onS = periodS * random.uniform([0.35, 0.65]);
        const law = { offS: periodS - onS, onS, spread, condition: 'contact', value } as const;
        return { rests: 'open', slips: drawTurns(random, endS, law) };
      },
    });
    if (isFalseAlarm('slipping', result.finding)) falseAlarms += 1;
  }
  return proportion(falseAlarms, trials);
};
