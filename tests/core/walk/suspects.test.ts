import { describe, expect, it } from 'vitest';
import type { ProfileLine } from '../../../src/core/profile/profile-format.js';
import { rerun } from '../../../src/core/walk/rerun.js';
import { describe as inWords } from '../../../src/core/words/describe.js';
import { english } from '../../../src/core/words/english.js';
import { ohms, type StoryLines, tellStory, type WalkStory } from '../../support/walk-story.js';

const through = (value: number, part: string, pads: string, pin: string): ProfileLine => ({
  ...ohms(value),
  chain: [
    { joint: `J1 pin ${pin}` },
    { joint: `${part} pad ${pads[0]}` },
    { part },
    { joint: `${part} pad ${pads[1]}` },
    { chip: 'U1' },
  ],
});

/** A two-line filter between two plain lines, and grounds at the end. */
const lines: StoryLines = [
  ['A', ohms(1200)],
  ['B', through(400, 'FL1', '14', '2')],
  ['C', through(420, 'FL1', '23', '3')],
  ['D', ohms(2400)],
  ['GND', { kind: 'ground' }],
  ['E', ohms(3300)],
  ['GND', { kind: 'ground' }],
];

const read = (story: WalkStory, value: number): WalkStory => story.lift(0.7).touch(value, 1.2);
const isOpen = (story: WalkStory): WalkStory => story.air(4).act('open');
const begun = (): WalkStory => tellStory({ lines }).lift(0.5).touch(1200, 1.2);
const said = (story: WalkStory): string[] =>
  story.of('suspects-ranked').flatMap((event) => inWords(event, story.state, english) ?? []);

describe('suspects in a walk', () => {
  it('should be told with the verdict that is not normal, and none before', () => {
    const story = begun();
    expect(story.of('suspects-ranked')).toEqual([]);
    isOpen(story);
    const [ranked] = story.of('suspects-ranked');
    expect(ranked?.t).toBe(story.of('pin-judged').at(-1)?.t);
    expect(ranked?.suspects[0]).toMatchObject({ where: 'joint', id: 'J1 pin 2', lines: ['B'] });
    expect(story.state.ranked).toEqual(ranked);
  });

  it('should name the filter once both of its lines are open, and say so once', () => {
    const story = read(isOpen(isOpen(begun())), 2400);
    expect(story.of('suspects-ranked').at(-1)?.suspects[0]).toMatchObject({ id: 'FL1' });
    read(story, 0.1);
    expect(said(story)).toHaveLength(1);
    expect(said(story)[0]).toMatch(/^Suspects: FL1 \d+ %.* Next best: /);
  });

  it('should leave a line alone that reads normal and is no suspect', () => {
    const story = read(isOpen(begun()), 420);
    const before = story.of('suspects-ranked').length;
    read(read(read(story, 2400), 0.1), 3300);
    expect(story.verdicts()['pin 6']).toBe('normal');
    expect(story.of('suspects-ranked')).toHaveLength(before);
  });

  it('should say the lead first when grounds and lines are open together', () => {
    const story = begun();
    for (let pin = 2; pin <= 5; pin += 1) isOpen(story);
    const first = story.of('suspects-ranked').at(-1)?.suspects[0];
    expect(first).toMatchObject({ where: 'lead', id: 'ground-clip' });
    expect(said(story).at(-1)).toMatch(
      /^Too much is open at once: look at the ground clip first\./,
    );
  });

  it('should be the same in a rerun', () => {
    const story = read(isOpen(isOpen(begun())), 2400).act('quit');
    expect([...rerun(story.opened, story.inputs)].slice(1)).toEqual(story.events);
    expect(story.events.filter(({ type }) => type === 'suspects-ranked').length).toBeGreaterThan(2);
  });
});
