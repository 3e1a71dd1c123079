import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WalkState } from '../../src/core/walk/state.js';
import { keyMapWith } from '../../src/ui/keys/key-map.js';
import type { Key } from '../../src/ui/keys/parse-keys.js';
import { type Mode, pressKey, type Step, walkMode } from '../../src/ui/mode.js';
import { steppedBench } from './support/bench-session.js';

const keys = keyMapWith({});
const key = (name: string): Key => ({ name, text: [...name].length === 1 ? name : '' });
const { state } = steppedBench().session;
const walking: WalkState = { ...state, stage: 'walking' };
const finished: WalkState = { ...state, stage: 'finished', cursor: state.plan.pins.length };

const press = (names: readonly string[], given: Mode = walkMode, at = walking): Step =>
  names.reduce<Step>(
    (step, name) => {
      const next = pressKey(step.mode, key(name), at, keys);
      return { ...next, acts: [...step.acts, ...next.acts] };
    },
    { mode: given, acts: [] },
  );

describe('keys on the walk', () => {
  it.each([
    ['o', 'open'],
    ['n', 'next'],
    ['b', 'back'],
    ['s', 'skip'],
    ['r', 'retake'],
    ['d', 'dismiss'],
    ['p', 'pause'],
  ])('should take %s for %s at once', (name, act) => {
    expect(press([name])).toMatchObject({ mode: walkMode, acts: [{ act }] });
  });

  it('should go on with the key that paused', () => {
    const paused = { ...walking, paused: 'asked' as const };
    expect(press(['p'], walkMode, paused).acts).toEqual([{ act: 'resume' }]);
  });

  it('should ask once more before it leaves, and stay for any other key', () => {
    expect(press(['q'])).toMatchObject({ mode: { mode: 'leaving' }, acts: [] });
    expect(press(['q', 'x'])).toMatchObject({ mode: walkMode, acts: [] });
    expect(press(['q', 'q']).acts).toEqual([{ act: 'quit' }]);
    expect(press(['ctrl+c', 'q']).acts).toEqual([{ act: 'quit' }]);
  });

  it('should leave a finished walk without asking', () => {
    expect(press(['q'], walkMode, finished).acts).toEqual([{ act: 'quit' }]);
  });

  it('should do nothing for escape, anywhere', () => {
    const modes: readonly Mode[] = [
      walkMode,
      { mode: 'keys' },
      { mode: 'leaving' },
      { mode: 'review', choice: 0 },
      { mode: 'go-to', text: '7', wrong: null },
      { mode: 'note', text: 'half a note', pin: '1' },
    ];
    for (const mode of modes) expect(press(['escape'], mode).acts).toEqual([]);
  });

  it('should say the last thing again', () => {
    expect(press(['c'])).toMatchObject({ repeat: true, acts: [] });
  });
});

describe('going to a pin', () => {
  it('should go to a pin by its name', () => {
    expect(press(['g', '1', '7', 'enter'])).toEqual({
      mode: walkMode,
      acts: [{ act: 'go-to', pin: '17' }],
    });
  });

  it('should say that there is no such pin and ask again', () => {
    const wrong = press(['g', '9', '9', 'enter']);
    expect(wrong).toMatchObject({ mode: { mode: 'go-to', text: '', wrong: '99' }, acts: [] });
    expect(press(['4', 'enter'], wrong.mode).acts).toEqual([{ act: 'go-to', pin: '4' }]);
  });

  it('should take acts for letters while it asks', () => {
    expect(press(['g', 'o', 's'])).toMatchObject({ mode: { text: 'os' }, acts: [] });
  });
});

describe('notes', () => {
  it('should keep the pin at which the note was begun', () => {
    const begun = press(['w', 'h', 'i']);
    const moved = { ...walking, cursor: 9 };
    expect(press(['enter'], begun.mode, moved).acts).toEqual([
      { act: 'note', text: 'hi', pin: '1' },
    ]);
  });

  it('should write what is pasted as one cleaned line', () => {
    const begun = press(['w']).mode;
    const pasted = { name: 'paste', text: 'a\nb\u001b[31m', pasted: true } as const;
    const { mode } = pressKey(begun, pasted, walking, keys);
    expect(mode).toMatchObject({ mode: 'note', text: 'a b\u241b[31m' });
  });

  it('should take a character back as it was put in', () => {
    expect(press(['w', 'a', '𝛀', 'backspace']).mode).toMatchObject({ text: 'a' });
    expect(press(['w', 'a', 'b', 'ctrl+u']).mode).toMatchObject({ text: '' });
  });

  it('should write no empty note', () => {
    expect(press(['w', 'enter'])).toEqual({ mode: walkMode, acts: [] });
  });

  it('should ignore pasted text on the walk', () => {
    const pasted = { name: 'paste', text: 'osq', pasted: true } as const;
    expect(pressKey(walkMode, pasted, walking, keys)).toEqual({ mode: walkMode, acts: [] });
  });
});

describe('review', () => {
  const pins = state.pins.map((record, at) =>
    at === 4 || at === 8 ? { ...record, verdict: 'open' as const, agreed: true } : record,
  );
  const found = { ...walking, pins, cursor: 12 };
  // Pins 1 to 12 were gone past; all but two of them unread, which are findings too.
  const good = pins.map((record, at) =>
    at < 12 && record.verdict === 'unread' ? { ...record, verdict: 'normal' as const } : record,
  );
  const two = { ...found, pins: good };

  it('should move within the list and go to the chosen pin', () => {
    const review = press(['v'], walkMode, two);
    expect(review.mode).toEqual({ mode: 'review', choice: 0 });
    expect(press(['down', 'down', 'down'], review.mode, two).mode).toMatchObject({ choice: 1 });
    expect(press(['up'], review.mode, two).mode).toMatchObject({ choice: 0 });
    expect(press(['end', 'enter'], review.mode, two)).toEqual({
      mode: walkMode,
      acts: [{ act: 'go-to', pin: '9' }],
    });
  });

  it('should leave the walk nowhere when there is nothing to choose', () => {
    const nothing = { ...walking, cursor: 0 };
    expect(press(['v', 'enter'], walkMode, nothing).acts).toEqual([]);
  });

  it('should be where a finished walk is, however it came there', () => {
    const done = { ...two, stage: 'finished' as const };
    expect(press(['down', 'enter'], walkMode, done).acts).toEqual([{ act: 'go-to', pin: '9' }]);
  });

  it('should give way to the walk when something is done there', () => {
    const review = press(['v'], walkMode, two).mode;
    expect(press(['r'], review, two)).toEqual({ mode: walkMode, acts: [{ act: 'retake' }] });
  });

  it('should stay with a finished walk', () => {
    const review: Mode = { mode: 'review', choice: 0 };
    expect(press(['escape'], review, finished).mode).toEqual(review);
    expect(press(['v'], review, finished).mode).toEqual(review);
    expect(press(['v'], review, two).mode).toEqual(walkMode);
  });
});

describe('any keys', () => {
  const any = fc.constantFrom(
    ...'onbsrgwpdcvq?x17 '.split(''),
    ...['enter', 'escape', 'up', 'down', 'backspace', 'f5', 'tab', 'ctrl+c'],
  );

  it('should never leave the walk by fewer than two keys in a row', () => {
    fc.assert(
      fc.property(fc.array(any, { maxLength: 40 }), (names) => {
        let mode: Mode = walkMode;
        names.forEach((name, at) => {
          const step = pressKey(mode, key(name), walking, keys);
          if (step.acts.some(({ act }) => act === 'quit')) {
            expect(mode.mode).toBe('leaving');
            expect(at).toBeGreaterThan(0);
          }
          mode = step.mode;
        });
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});
