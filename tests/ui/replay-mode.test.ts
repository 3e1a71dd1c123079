// Keys while a saved session is played.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Control } from '../../src/core/replay/control.js';
import type { WalkState } from '../../src/core/walk/state.js';
import { replayActs } from '../../src/core/words/replay-words.js';
import { keyMapWith } from '../../src/ui/keys/key-map.js';
import type { Key } from '../../src/ui/keys/parse-keys.js';
import { replayActOfKey, replayKeys } from '../../src/ui/keys/replay-keys.js';
import { type Mode, walkMode } from '../../src/ui/mode.js';
import { pressReplayKey, type ReplayStep } from '../../src/ui/replay-mode.js';
import { steppedBench } from './support/bench-session.js';

const usual = keyMapWith({});
const key = (name: string): Key => ({ name, text: [...name].length === 1 ? name : '' });
const { state } = steppedBench().session;
const walking: WalkState = { ...state, stage: 'walking' };
const closed: WalkState = {
  ...state,
  stage: 'closed',
  cursor: state.plan.pins.length,
  pins: state.pins.map((record, at) => ({ ...record, verdict: at === 4 ? 'open' : 'normal' })),
};

const press = (
  names: readonly string[],
  { from = walkMode, at = walking }: { from?: Mode; at?: WalkState } = {},
): ReplayStep =>
  names.reduce<ReplayStep>((step, name) => pressReplayKey(step.mode, key(name), at, usual), {
    mode: from,
    acts: [],
    control: null,
  });

describe('keys of a replay', () => {
  it('should give every act a key, and no key to two', () => {
    const map = replayKeys(usual);
    const names = replayActs.flatMap((act) => map[act]);
    for (const act of replayActs) expect(map[act], act).not.toEqual([]);
    expect(new Set(names).size).toBe(names.length);
  });

  it('should follow the keys and pedals chosen for the walk', () => {
    const map = replayKeys(keyMapWith({ next: ['f5'], back: ['f6'], quit: ['x'] }));
    expect(replayActOfKey(map, 'f5')).toBe('next-waymark');
    expect(replayActOfKey(map, 'f6')).toBe('previous-waymark');
    expect(replayActOfKey(map, 'x')).toBe('quit');
    expect(replayActOfKey(map, 'q')).toBeNull();
  });

  it('should never lose the key that leaves', () => {
    const map = replayKeys(keyMapWith({ quit: ['right'] }));
    expect(replayActOfKey(map, 'right')).toBe('quit');
  });
});

describe('pressing a key', () => {
  it.each<[string, Control]>([
    ['space', { control: 'pause-or-go-on' }],
    ['n', { control: 'to-next' }],
    ['enter', { control: 'to-next' }],
    ['b', { control: 'to-previous' }],
    ['right', { control: 'by-time', seconds: 5 }],
    ['left', { control: 'by-time', seconds: -5 }],
    ['up', { control: 'faster' }],
    ['down', { control: 'slower' }],
    ['.', { control: 'step-on' }],
    [',', { control: 'step-back' }],
    ['home', { control: 'to-start' }],
    ['end', { control: 'to-end' }],
  ])('should take %s as a wish', (name, control) => {
    expect(press([name])).toEqual({ mode: walkMode, acts: [], control });
  });

  it('should leave at once: nothing can be lost', () => {
    expect(press(['q']).acts).toEqual([{ act: 'quit' }]);
    expect(press(['ctrl+c']).acts).toEqual([{ act: 'quit' }]);
  });

  it('should say the last cue again', () => {
    expect(press(['c']).repeat).toBe(true);
  });

  it('should do nothing that would change the walk, whatever is pressed', () => {
    const names = fc.constantFrom(
      ...['o', 'n', 'b', 's', 'r', 't', 'w', 'd', 'v', 'g', '?', 'enter', 'escape', 'up', 'down'],
      ...['left', 'right', 'home', 'end', 'space', '.', ',', '8', 'x', 'backspace'],
    );
    fc.assert(
      fc.property(fc.array(names, { maxLength: 25 }), fc.boolean(), (pressed, over) => {
        let mode: Mode = walkMode;
        for (const name of pressed) {
          const step = pressReplayKey(mode, key(name), over ? closed : walking, usual);
          for (const { act } of step.acts) expect(act).toBe('go-to');
          expect(['note', 'leaving']).not.toContain(step.mode.mode);
          mode = step.mode;
        }
      }),
      { seed: 36, numRuns: 300 },
    );
  });
});

describe('a place that is typed', () => {
  it.each<[string, Control]>([
    ['1:35', { control: 'to-time', t: 95 }],
    ['8', { control: 'to-time', t: 8 }],
    ['pin 8', { control: 'to-pin', pin: '8' }],
  ])('should go to %s', (text, control) => {
    const typed = press(['g', ...[...text].map((letter) => letter)]);
    expect(typed.mode).toEqual({ mode: 'go-to', text, wrong: null });
    expect(press(['enter'], { from: typed.mode })).toEqual({ mode: walkMode, acts: [], control });
  });

  it('should ask again for what is no place', () => {
    const typed = press(['g', 'x', 'enter']);
    expect(typed).toEqual({
      mode: { mode: 'go-to', text: '', wrong: 'x' },
      acts: [],
      control: null,
    });
  });

  it('should be given up without moving', () => {
    expect(press(['g', '3', 'escape'])).toMatchObject({ mode: walkMode, control: null });
    expect(press(['g', 'enter'])).toMatchObject({ mode: walkMode, control: null });
  });
});

describe('the list of what is not normal', () => {
  it('should be moved in and left by its own keys', () => {
    const list = press(['v']);
    expect(list.mode).toEqual({ mode: 'review', choice: 0 });
    expect(press(['v'], { from: list.mode }).mode).toEqual(walkMode);
    expect(press(['escape'], { from: list.mode }).mode).toEqual(walkMode);
    expect(press(['right'], { from: list.mode }).control).toEqual({
      control: 'by-time',
      seconds: 5,
    });
  });

  it('should lead to the chosen pin, also at the end of the session', () => {
    const pin = closed.plan.pins[4]?.pin;
    expect(press(['enter'], { at: closed }).acts).toEqual([{ act: 'go-to', pin }]);
    const list: Mode = { mode: 'review', choice: 0 };
    expect(press(['enter'], { from: list, at: closed }).acts).toEqual([{ act: 'go-to', pin }]);
  });
});
