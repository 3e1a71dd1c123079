import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../../src/core/definition/read-definition.js';
import type { PadCommand } from '../../../src/core/pads/pad.js';
import { padsKind } from '../../../src/core/pads/pad-file.js';
import { beginLearning, learnFrom, type PadLesson } from '../../../src/core/pads/pad-learner.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { demo, plainMeter } from './demo-profile.js';

/** A touch of so many seconds at ten readings a second (null: in the air), each value scattered by `noise`. */
type Step = readonly [value: number | null, seconds: number, noise?: number];

const lessons = (
  steps: readonly Step[],
  commands: readonly PadCommand[] = ['open', 'next'],
  plan = planWalk(demo),
): PadLesson[] => {
  const setup = { commands, function: 'resistance', accuracy: plainMeter, plan } as const;
  const begun = beginLearning(setup);
  let { learner } = begun;
  const told = [...begun.lessons];
  let t = 0;
  for (const [value, seconds, noise = 0] of steps)
    for (let i = 0; i < Math.round(10 * seconds); i += 1) {
      t += 0.1;
      const step = learnFrom(
        learner,
        value === null
          ? { t, function: 'resistance', overload: true }
          : { t, function: 'resistance', value: value * (1 + noise * (i % 2 === 0 ? 1 : -1)) },
      );
      learner = step.learner;
      told.push(...step.lessons);
    }
  return told;
};
const words = (told: readonly PadLesson[]): string[] =>
  told.map((one) =>
    one.lesson === 'done'
      ? `done ${one.pads.length}`
      : `${one.lesson} ${one.lesson === 'learned' ? one.pad.command : one.command}`,
  );

describe('learning the pads', () => {
  it('should ask for each in turn, take what stands still, and end with them all', () => {
    const told = lessons([
      [null, 1],
      [750, 2],
      [null, 1],
      [160_000, 2],
      [null, 1],
    ]);
    expect(words(told)).toEqual([
      'wanted open',
      'learned open',
      'wanted next',
      'learned next',
      'done 2',
    ]);
    expect(told.at(-1)).toMatchObject({ pads: [{ value: 750 }, { value: 160_000 }] });
  });

  it('should wait for the reading to stand still, and for the probe to be lifted', () => {
    expect(
      words(
        lessons([
          [750, 0.4],
          [null, 1],
        ]),
      ),
    ).toEqual(['wanted open']);
    expect(
      words(
        lessons([
          [750, 4, 0.02],
          [null, 1],
        ]),
      ),
    ).toEqual(['wanted open']);
    // Slid from one pad to the next without a lift: the second was not asked for yet.
    expect(
      words(
        lessons([
          [750, 2],
          [160_000, 2],
        ]),
      ),
    ).toEqual(['wanted open', 'learned open']);
    expect(
      words(
        lessons([
          [750, 2],
          [null, 0.2],
          [750, 2],
        ]),
      ),
    ).toEqual(['wanted open', 'learned open']);
  });

  it('should refuse a touch that reads like a line or like a pad, and ask again', () => {
    const told = lessons([
      [2070, 2],
      [null, 1],
      [750, 2],
      [null, 1],
      [751, 2],
      [null, 1],
    ]);
    expect(words(told)).toEqual([
      'wanted open',
      'refused open',
      'wanted open',
      'learned open',
      'wanted next',
      'refused next',
      'wanted next',
    ]);
    expect(told[1]).toMatchObject({ what: expect.stringMatching(/reads like the line/) });
    expect(told[5]).toMatchObject({ what: expect.stringMatching(/like the pad "open"/) });
  });
});

describe('the file of pads', () => {
  const file = (more: object): string =>
    JSON.stringify({
      format: 'pinwalk-pads/1',
      function: 'resistance',
      learned: '2026-11-28T04:00:00.000Z',
      driver: null,
      pads: [
        { command: 'open', value: 750, standardUncertainty: 0.8 },
        { command: 'next', value: 1200, standardUncertainty: 1.2 },
      ],
      ...more,
    });

  it('should be read as it was written', () => {
    const { content, problems } = readDefinition(padsKind, file({}));
    expect(problems).toEqual([]);
    expect(content?.pads.map(({ command }) => command)).toEqual(['open', 'next']);
  });

  it.each<[string, object, RegExp]>([
    [
      'two pads alike',
      {
        pads: [
          { command: 'open', value: 750, standardUncertainty: 0.8 },
          { command: 'next', value: 751, standardUncertainty: 0.8 },
        ],
      },
      /reads like the pad "open"/,
    ],
    [
      'a command nobody knows',
      { pads: [{ command: 'jump', value: 1, standardUncertainty: 1 }] },
      /command/,
    ],
    ['a key nobody knows', { colour: 'red' }, /colour/],
    ['no pads', { pads: [] }, /pads/],
    ['another format', { format: 'pinwalk-pads/2' }, /newer pinwalk/],
  ])('should refuse %s', (_, more, says) => {
    const { content, problems } = readDefinition(padsKind, file(more));
    expect(content).toBeUndefined();
    expect(
      problems.map(({ path, what, fix }) => `${path.join('.')} ${what} ${fix}`).join(),
    ).toMatch(says);
  });
});
