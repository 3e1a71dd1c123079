// A walk of a wide connector in which every third pin is wrong: the most a first page has to hold.
import type { WalkEvent } from '../../src/core/events.js';
import type { Profile } from '../../src/core/profile/profile-format.js';
import type { Verdict } from '../../src/core/verdict.js';
import { opened, profile } from './session-events.js';

const wrong: readonly Verdict[] = ['open', 'low', 'high', 'short', 'unsure', 'wobble'];
const bounds = { nominal: 400, low: 360, high: 440 };

const wide = (pins: number): Profile => {
  const numbers = Array.from({ length: pins }, (_, at) => at + 1);
  const line = (n: number): string => `LINE_WITH_A_LONG_NAME_${n}`;
  return {
    ...profile,
    connector: {
      ...profile.connector,
      pins: numbers.map((n) => ({ pin: String(n), line: line(n), row: n <= pins / 2 ? 1 : 2 })),
    },
    lines: Object.fromEntries(
      numbers.map((n) => [
        line(n),
        {
          kind: 'signal',
          title: `Line number ${n} of the wide connector`,
          expect: { resistance: { nominal: 400, tolerance: 0.1 } },
        },
      ]),
    ),
    parts: {},
  };
};

export const longWalk = (pins: number): readonly WalkEvent[] => [
  {
    ...opened,
    simulated: true,
    profile: { ...opened.profile, content: { ...wide(pins), demo: true } },
  },
  { type: 'ground-checked', t: 1, outcome: 'skipped' },
  ...Array.from({ length: pins }, (_, at): WalkEvent[] => {
    const pin = String(at + 1);
    const line = `LINE_WITH_A_LONG_NAME_${pin}`;
    const verdict = at % 3 === 0 ? (wrong[(at / 3) % wrong.length] ?? 'open') : 'normal';
    const t = 2 + 3 * at;
    const read = verdict === 'open' ? { overload: true as const } : { value: 387.25 };
    return [
      {
        type: 'pin-settled',
        t,
        touch: at,
        pin,
        line,
        ...read,
        standardUncertainty: verdict === 'open' ? null : 1.25,
        readings: 5,
        function: 'resistance',
        from: t - 1,
        to: t,
      },
      {
        type: 'pin-judged',
        t,
        pin,
        line,
        verdict,
        confidence: 0.97,
        expected: bounds,
        agreed: true,
      },
    ];
  }).flat(),
];
