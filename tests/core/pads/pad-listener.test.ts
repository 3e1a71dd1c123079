import { describe, expect, it } from 'vitest';
import type { Pad } from '../../../src/core/pads/pad.js';
import {
  createPadListener,
  mayBePad,
  type PadInput,
  padStep,
} from '../../../src/core/pads/pad-listener.js';
import { walkWithPads } from '../../benchmarks/suspects/pad-walks.js';
import { demo } from './demo-profile.js';

const pads: readonly Pad[] = [
  { command: 'open', value: 750, standardUncertainty: 0.8 },
  { command: 'repeat-cue', value: 1200, standardUncertainty: 1.2 },
];
const u = 1;

const touch = (from: number, lastsS: number, value = 750): PadInput => ({
  kind: 'touch',
  touch: { from, to: from + lastsS, value, u },
});
const air = (t: number): PadInput => ({ kind: 'air', t });
const line = (from: number, value: number): PadInput => ({ kind: 'line', from, value, u });

/** What is heard, as words, with ten readings a second. */
const heard = (inputs: readonly PadInput[], periodS = 0.1): string[] => {
  let state = createPadListener(pads, periodS);
  return inputs.flatMap((input) => {
    const step = padStep(state, input);
    state = step.state;
    return step.heard.map((one) => `${one.heard} ${one.command}`);
  });
};

const twice = [touch(10, 0.4), touch(10.8, 0.4)];

describe('a double touch', () => {
  it('should be echoed at once and carried out when the walk reads elsewhere', () => {
    expect(heard(twice)).toEqual(['asked open']);
    expect(heard([...twice, air(12), line(12.2, 4680)])).toEqual(['asked open', 'given open']);
  });

  it('should be carried out after long in the air, sooner where nothing moves', () => {
    expect(heard([...twice, air(22)])).toEqual(['asked open']);
    expect(heard([...twice, air(24)])).toEqual(['asked open', 'given open']);
    const cue = [touch(10, 0.4, 1200), touch(10.8, 0.4, 1200)];
    expect(heard([...cue, air(13)])).toEqual(['asked repeat-cue']);
    expect(heard([...cue, air(14.5)])).toEqual(['asked repeat-cue', 'given repeat-cue']);
  });

  it('should be carried out once', () => {
    expect(heard([...twice, line(13, 4680), air(40), line(41, 4680)])).toEqual([
      'asked open',
      'given open',
    ]);
  });

  it('should be taken back by a third touch, by word, or by a touch that comes too soon', () => {
    const back = ['asked open', 'cancelled open'];
    expect(heard([...twice, touch(12.5, 0.3), air(60)])).toEqual(back);
    expect(heard([...twice, { kind: 'cancel' }, air(60)])).toEqual(back);
    expect(heard([...twice, touch(11.5, 0.1, 5000), air(60)])).toEqual(back);
    expect(heard([...twice, line(11.4, 4680), air(60)])).toEqual(back);
  });

  it('should be heard on a slow meter, of which each touch shows two readings', () => {
    expect(heard([touch(10, 0.4), touch(11.6, 0.4)], 0.4)).toEqual(['asked open']);
    expect(heard([touch(10, 0), touch(11.6, 0)], 0.4)).toEqual([]);
  });
});

describe('what is no command', () => {
  it.each<[string, readonly PadInput[]]>([
    ['one touch', [touch(10, 0.4), air(60)]],
    ['one long touch', [touch(10, 3), air(60)]],
    ['a touch and a long touch', [touch(10, 0.4), touch(10.8, 2), air(60)]],
    ['two touches far apart', [touch(10, 0.4), touch(13, 0.4), air(60)]],
    ['two brushes', [touch(10, 0.05), touch(10.4, 0.05), air(60)]],
    ['touches of two pads', [touch(10, 0.4), touch(10.8, 0.4, 1200), air(60)]],
    ['two touches of nothing known', [touch(10, 0.4, 900), touch(10.8, 0.4, 900), air(60)]],
    [
      'two touches right after another',
      [touch(9.5, 0.3, 4680), touch(10, 0.4), touch(10.8, 0.4), air(60)],
    ],
    [
      'one with something between',
      [touch(10, 0.3), touch(10.5, 0.1, 4680), touch(10.8, 0.4), air(60)],
    ],
  ])('should hear nothing in %s', (_, inputs) => {
    expect(heard(inputs)).toEqual([]);
  });

  it('should never come of a line that reads like a pad: it is held when it is read', () => {
    // Hunting for the pin, then holding it: the walk reads 750 Ω there.
    expect(heard([...twice, line(15, 750), air(60), line(61, 4680)])).toEqual([
      'asked open',
      'cancelled open',
      'shadowed open',
    ]);
  });

  it('should not come of a pad that a line was found to read like', () => {
    expect(heard([line(5, 751), ...twice, air(60)])).toEqual(['shadowed open']);
    expect(heard([line(5, 751), line(7, 751)])).toEqual(['shadowed open']);
    const other = [touch(10, 0.4, 1200), touch(10.8, 0.4, 1200), air(60)];
    expect(heard([line(5, 751), ...other])).toContain('given repeat-cue');
  });
});

describe('a touch that may be of a pad', () => {
  const state = createPadListener(pads, 0.1);
  it('should be no pin until it has lasted too long for a pad', () => {
    expect(mayBePad(state, { value: 750, u, lastsS: 0.3 })).toBe(true);
    expect(mayBePad(state, { value: 750, u, lastsS: 2.2 })).toBe(true);
    expect(mayBePad(state, { value: 750, u, lastsS: 2.8 })).toBe(false);
    expect(mayBePad(state, { value: 900, u, lastsS: 0.3 })).toBe(false);
    // Out of use, it is still no pin when it is touched as a pad is.
    const shadowed = padStep(state, line(5, 750)).state;
    expect(mayBePad(shadowed, { value: 750, u, lastsS: 0.3 })).toBe(true);
  });
});

describe('walks with leaky lines', () => {
  it.each([
    [2.5, 0.9],
    [5, 0.95],
    [20, 0.95],
  ])('should give no false command at %s readings/s, and hear what was meant', (rate, least) => {
    const found = walkWithPads(demo, {
      walks: 1000,
      periodS: 1 / rate,
      leaky: 'random',
      seed: 'test',
    });
    expect(found.leakyLines).toBe(3000);
    expect(found.falseCommands).toBe(0);
    expect(found.meant).toBeGreaterThan(2500);
    expect(found.heard / found.meant).toBeGreaterThan(least);
  });

  it('should be rare even where every leaky line reads exactly like a pad', () => {
    const found = walkWithPads(demo, {
      walks: 400,
      periodS: 0.2,
      leaky: 'like-pads',
      seed: 'test',
    });
    expect(found.falseEchoes + found.shadowed).toBeGreaterThan(100);
    expect(found.falseCommands / found.leakyLines).toBeLessThan(0.005);
  });
});
