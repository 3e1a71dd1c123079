// Draws a connector: grounds at both ends and between, pairs that read alike, single lines, supplies and
// lines that read overload when they are healthy. The result is a profile that validates.
import {
  type Profile,
  type ProfileLine,
  profileFormat,
} from '../../../src/core/profile/profile-format.js';
import type { Random } from '../shared/random.js';
import type { BoardLaws } from './mixture.js';

type Lines = Record<string, ProfileLine>;

/** Three digits, as a person would note an expected value. */
const noted = (value: number): number => Number(value.toPrecision(3));

interface Drawing {
  readonly laws: BoardLaws;
  readonly random: Random;
  readonly lines: Lines;
  readonly order: string[];
  lastPair: number | null;
}

const limits = (laws: BoardLaws): Pick<ProfileLine, 'limits'> =>
  laws.shortLimit === undefined ? {} : { limits: { short: laws.shortLimit } };

const addPair = (d: Drawing): void => {
  const { laws, random } = d;
  const again = d.lastPair !== null && random.chance(laws.pairsAlike) ? d.lastPair : null;
  const nominal = again ?? noted(random.logUniform(laws.signal));
  d.lastPair = nominal;
  const tolerance = random.pick(laws.tolerances);
  const lane = `D${d.order.length}`;
  for (const [own, other] of [['_P', '_N'] as const, ['_N', '_P'] as const]) {
    d.lines[lane + own] = {
      kind: 'signal',
      group: 'data',
      mate: lane + other,
      expect: { [laws.function]: { nominal, tolerance } },
      ...limits(laws),
    };
    d.order.push(lane + own);
  }
};

const addSupply = (d: Drawing): void => {
  const { laws, random } = d;
  const low = random.chance(laws.supplyLowShare);
  const nominal = noted(random.logUniform(low ? laws.supplyLow : laws.supplyHigh));
  const own = noted(nominal * random.uniform([0.3, 0.5]));
  const name = `V${d.order.length}`;
  d.lines[name] = {
    kind: 'supply',
    expect: { [laws.function]: { nominal, tolerance: laws.supplyTolerance } },
    ...(low ? { limits: { short: own } } : limits(laws)),
    ...(random.chance(0.7) ? { charges: true } : {}),
  };
  for (let pin = random.chance(0.3) ? 2 : 1; pin > 0; pin -= 1) d.order.push(name);
};

const addSingle = (d: Drawing): void => {
  const { laws, random } = d;
  const name = `S${d.order.length}`;
  const overload = random.chance(laws.expectedOverload * 2);
  d.lines[name] = overload
    ? {
        kind: random.chance(0.5) ? 'unused' : 'signal',
        expect: { [laws.function]: 'overload' },
        ...limits(laws),
      }
    : {
        kind: 'signal',
        expect: {
          [laws.function]: {
            nominal: noted(random.logUniform(laws.signal)),
            tolerance: random.pick(laws.tolerances),
          },
        },
        ...limits(laws),
      };
  d.order.push(name);
};

export const drawLayout = (laws: BoardLaws, name: string, random: Random): Profile => {
  const d: Drawing = { laws, random, lines: {}, order: ['GND'], lastPair: null };
  d.lines.GND = { kind: 'ground', ...limits(laws) };
  const pins = random.whole(laws.pins);
  let nextGround = random.whole(laws.groundEvery);
  while (d.order.length < pins - 1) {
    if (d.order.length >= nextGround) {
      d.order.push('GND');
      nextGround = d.order.length + random.whole(laws.groundEvery);
    } else if (random.chance(laws.supplies)) addSupply(d);
    else if (random.chance(laws.pairs)) addPair(d);
    else addSingle(d);
  }
  d.order.push('GND');
  return profileFormat.parse({
    format: 'pinwalk-profile/1',
    id: name,
    title: `Generated connector ${name}`,
    demo: true,
    provenance: { by: 'settling benchmark', date: '2026-01-31', how: 'drawn by seed' },
    measure: { function: laws.function, polarity: 'red-walks' },
    connector: {
      id: 'J1',
      pins: d.order.map((line, index) => ({ pin: String(index + 1), line })),
    },
    lines: d.lines,
  });
};
