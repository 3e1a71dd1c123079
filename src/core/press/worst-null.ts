// The chance that a stopping rule fires although pressing does nothing, worked out exactly over all orders of
// window states. It promises a bound for every exchangeable null: whatever share of the windows shows contact,
// as long as no order of them is likelier than another.
import { binomialCoefficient } from '../numbers/binomial-coefficient.js';
import { mostCycles } from './press-design.js';

/** What a rule may look at after a whole number of cycles. */
export interface NullTally {
  readonly cycles: number;
  /** Press windows, and release windows, that show contact. */
  readonly pressed: number;
  readonly released: number;
  /** Cycles of contact under press and none after, with both edges in their answer zones. */
  readonly answers: number;
  /** The same the other way round. */
  readonly reversed: number;
}

interface Weighted {
  readonly tally: NullTally;
  /** Orders that lead here without a stop, each weighted with the chance of its edges. */
  readonly weight: number;
}

const windows = 2 * mostCycles;
const choose = (n: number, k: number): number => Number(binomialCoefficient(n, k));

/**
 * Given that `m` of the 16 windows show contact, all C(16, m) orders are equally likely under the null
 * (permutation argument: Fisher 1935, Pitman 1937), so the chance of stopping is a count of orders by first
 * passage over the looks (Armitage, McPherson and Rowe 1969). Any exchangeable null is a mixture over `m`;
 * the largest chance over `m` therefore bounds it. Attributions from memory.
 * @param lockChance that a cycle which shows the pattern also has both edges in their zones by accident.
 * @param mostAnswers answers are counted up to here; 0 where the rule does not look at them.
 * @throws RangeError unless lockChance lies in [0, 1].
 */
export const worstNullChance = (
  stops: (tally: NullTally) => boolean,
  lockChance: number,
  mostAnswers: number,
): number => {
  if (!(lockChance >= 0 && lockChance <= 1)) {
    throw new RangeError(`a chance lies in [0, 1], not ${lockChance}`);
  }
  const stopped: Weighted[] = [];
  let going: readonly Weighted[] = [
    { tally: { cycles: 0, pressed: 0, released: 0, answers: 0, reversed: 0 }, weight: 1 },
  ];
  for (let cycle = 0; cycle < mostCycles; cycle += 1) {
    const next = oneCycleOn(going, lockChance, mostAnswers);
    stopped.push(...next.filter(({ tally }) => stops(tally)));
    going = next.filter(({ tally }) => !stops(tally));
  }
  let worst = 0;
  for (let contacts = 0; contacts <= windows; contacts += 1) {
    const orders = stopped.reduce(
      (sum, { tally, weight }) => sum + weight * waysOn(tally, contacts),
      0,
    );
    worst = Math.max(worst, orders / choose(windows, contacts));
  }
  return Math.min(1, worst);
};

/** Orders of the windows after the stop that make up the given number of contacts. */
const waysOn = ({ cycles, pressed, released }: NullTally, contacts: number): number =>
  choose(windows - 2 * cycles, contacts - pressed - released);

const oneCycleOn = (
  going: readonly Weighted[],
  lockChance: number,
  mostAnswers: number,
): readonly Weighted[] => {
  const gathered = new Map<string, Weighted>();
  const add = (tally: NullTally, weight: number): void => {
    if (weight === 0) return;
    const key = Object.values(tally).join();
    gathered.set(key, { tally, weight: weight + (gathered.get(key)?.weight ?? 0) });
  };
  for (const { tally, weight } of going) {
    const { cycles, pressed, released, answers, reversed } = tally;
    const whole = { ...tally, cycles: cycles + 1 };
    add(whole, weight);
    add({ ...whole, pressed: pressed + 1, released: released + 1 }, weight);
    const closes = { ...whole, pressed: pressed + 1 };
    add({ ...closes, answers: Math.min(mostAnswers, answers + 1) }, weight * lockChance);
    add(closes, weight * (1 - lockChance));
    const leaves = { ...whole, released: released + 1 };
    add({ ...leaves, reversed: Math.min(mostAnswers, reversed + 1) }, weight * lockChance);
    add(leaves, weight * (1 - lockChance));
  }
  return [...gathered.values()];
};
