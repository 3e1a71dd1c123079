// Seeded small boards for the probe benchmark: chains of one to three parts, a filter on two lines, a pull-up
// beside the line. Some parts fail more often than others, their joints with them, so that the places are not all alike.
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';
import { buildModel } from '../../../src/core/suspects/build-model.js';
import type { Observation } from '../../../src/core/suspects/evidence.js';
import type { SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import type { Random } from '../shared/random.js';

export const families = [
  'one part',
  'two parts',
  'three parts',
  'pull-up on the pin side',
  'pull-up on the chip side',
  'filter, both lines open',
  'filter, one line open',
] as const;
export type Family = (typeof families)[number];

export interface SmallChain {
  readonly model: SuspectModel;
  /** What the walk found, each pin touched again. */
  readonly walked: readonly Observation[];
}

type Chain = NonNullable<Profile['lines'][string]['chain']>;

const through = (part: string): Chain => [
  { joint: `${part} pad 1` },
  { part },
  { joint: `${part} pad 2` },
];

const pullUp: Chain = [{ shunt: { part: 'R9', reads: 10_000 } }];

const chains = (family: Family): readonly Chain[] => {
  const line = (...middle: Chain): Chain => [...middle, { chip: 'U1' }];
  switch (family) {
    case 'one part':
      return [line(...through('R1'))];
    case 'two parts':
      return [line(...through('R1'), ...through('R2'))];
    case 'three parts':
      return [line(...through('R1'), ...through('R2'), ...through('R3'))];
    case 'pull-up on the pin side':
      return [line(...pullUp, ...through('R1'), ...through('R2'))];
    case 'pull-up on the chip side':
      return [line(...through('R1'), ...pullUp, ...through('R2'))];
    case 'filter, both lines open':
    case 'filter, one line open':
      return [
        line({ joint: 'FL1 pad 1' }, { part: 'FL1' }, { joint: 'FL1 pad 4' }),
        line({ joint: 'FL1 pad 2' }, { part: 'FL1' }, { joint: 'FL1 pad 3' }),
      ];
  }
};

const partsOf = (chain: Chain): string[] =>
  chain.flatMap((stop) =>
    'part' in stop
      ? [stop.part]
      : 'shunt' in stop
        ? [stop.shunt.part]
        : 'chip' in stop
          ? [stop.chip]
          : [],
  );

const kindOf = (part: string): string =>
  part.startsWith('U') ? 'chip' : part.startsWith('FL') ? 'filter' : 'resistor';

/** Probes that never mislead and leads that never fail: what is left is the order of the probes. */
const sharp = {
  leads: { 'ground-clip': 0, 'walking-lead': 0 },
  noise: {
    missedPin: 1e-9,
    missedPlace: 1e-9,
    misjudged: 1e-9,
    falselyAnswers: 1e-9,
    missesAnswer: 1e-9,
    flexes: 0,
  },
} as const;

/** Eight times the usual one of a part or joint, as after heat. */
const weakPrior = 0.032;

export const drawSmallChain = (family: Family, random: Random): SmallChain => {
  const plain = chains(family);
  const candidates = [...new Set(plain.flatMap(partsOf))].filter((part) => !part.startsWith('U'));
  const weak = candidates.filter(() => random.chance(0.3));
  const isWeak = (place: string): boolean => weak.some((part) => place.startsWith(part));
  const drawn = plain.map(
    (chain): Chain =>
      chain.map((stop) =>
        'joint' in stop && isWeak(stop.joint) ? { ...stop, prior: weakPrior } : stop,
      ),
  );
  const lines = drawn.map((chain, i) => [
    `LINE${i + 1}`,
    {
      kind: 'signal',
      expect: { resistance: { nominal: 470, tolerance: 0.1 } },
      chain: [{ joint: `J1 pin ${i + 1}` }, ...chain],
    },
  ]);
  const parts = new Map<string, string[]>();
  drawn.forEach((chain, i) => {
    for (const part of partsOf(chain))
      parts.set(part, [...(parts.get(part) ?? []), `LINE${i + 1}`]);
  });
  const profile = profileFormat.parse({
    format: 'pinwalk-profile/1',
    id: 'small-chain',
    title: 'A small chain of the benchmark',
    demo: true,
    provenance: { by: 'the pinwalk project', date: '2026-01-31', how: 'Invented' },
    measure: { function: 'resistance', polarity: 'red-walks' },
    connector: { id: 'J1', pins: lines.map(([line], i) => ({ pin: String(i + 1), line })) },
    lines: Object.fromEntries(lines),
    parts: Object.fromEntries(
      [...parts].map(([part, on]) => [
        part,
        {
          kind: kindOf(part),
          lines: [...new Set(on)],
          ...(isWeak(part) ? { prior: weakPrior } : {}),
        },
      ]),
    ),
  });
  const model = buildModel(profile, sharp);
  const [, second] = model.routes;
  const walked: Observation[] = [{ kind: 'pin', pin: '1', verdict: 'open' }];
  if (second !== undefined) {
    const verdict = family === 'filter, both lines open' ? 'open' : 'normal';
    walked.push({ kind: 'pin', pin: '2', verdict });
  }
  return {
    model,
    walked: family.startsWith('pull-up')
      ? walked.map((seen) => ({ ...seen, verdict: 'high' }))
      : walked,
  };
};
