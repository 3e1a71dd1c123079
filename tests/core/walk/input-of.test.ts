import { describe, expect, it } from 'vitest';
import type { Input } from '../../../src/core/inputs.js';
import { beginWalk, decide } from '../../../src/core/walk/decide.js';
import { inputOf } from '../../../src/core/walk/input-of.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { rerun, rerunSession } from '../../../src/core/walk/rerun.js';
import { ohms, tellStory } from '../../support/walk-story.js';

const story = () =>
  tellStory({
    lines: [
      ['GND', { kind: 'ground' }],
      ['D0_P', ohms(388)],
      ['CLK', ohms(742)],
    ],
  })
    .air(0.8)
    .touch(0.2, 1.5)
    .link('lost')
    .link('returned')
    .lift(0.9)
    .touch(388.4, 1.5)
    .act('note', { text: 'here' })
    .blank(0.3)
    .air(3)
    .act('open')
    .act('go-to', { pin: '2' })
    .touch(388.4, 1.5);

const inputs: readonly Input[] = [
  {
    kind: 'reading',
    reading: { t: 1, function: 'resistance', value: 388.4, range: 600, flags: ['low-battery'] },
  },
  { kind: 'reading', reading: { t: 1, function: 'diode', overload: true } },
  { kind: 'reading', reading: { t: 1, blank: true } },
  { kind: 'reading', reading: { t: 1, fault: '38?' } },
  { kind: 'act', t: 1, act: { act: 'go-to', pin: '2' } },
  { kind: 'act', t: 1, act: { act: 'note', pin: '1', text: 'here' } },
  { kind: 'cue', t: 1, cue: 'press' },
  { kind: 'link', t: 1, change: 'lost', detail: 'unplugged' },
  { kind: 'link', t: 1, change: 'ended' },
  { kind: 'meter', t: 1, says: 'identity', text: 'demo meter' },
  { kind: 'file', t: 1, change: 'blocked', detail: 'disk full' },
];

describe('inputOf', () => {
  it.each(inputs.map((input) => [input]))(
    'gives back the input that an event records: %o',
    (input) => {
      const { state } = beginWalk(openWalk(story().opened));
      const [recorded] = decide(state, input).events;
      if (recorded === undefined) throw new Error('nothing was recorded');
      expect(inputOf(recorded)).toEqual(input);
    },
  );

  it('gives nothing for what was decided', () => {
    const decided = story().events.filter(({ type }) =>
      ['pin-reached', 'touch-captured', 'pin-settled', 'pin-judged', 'question-asked'].includes(
        type,
      ),
    );
    expect(decided.length).toBeGreaterThan(8);
    expect(decided.map(inputOf)).toEqual(decided.map(() => null));
  });

  it('gives nothing for a cue that the walk itself gave', () => {
    expect(inputOf({ type: 'cue-given', t: 1, cue: 'press', place: null })).toBeNull();
    expect(inputOf({ type: 'cue-given', t: 1, cue: 'press' })).not.toBeNull();
  });
});

describe('a rerun', () => {
  it('from the inputs, and from the stored events, gives the same events', () => {
    const { opened, inputs: given, events } = story();
    expect([...rerun(opened, given)]).toEqual([opened, ...events]);
    expect([...rerunSession(opened, events)]).toEqual([opened, ...events]);
  });
});
