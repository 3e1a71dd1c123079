// Places in a session as people write them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Control } from '../../../src/core/replay/control.js';
import { readGoal } from '../../../src/core/replay/read-goal.js';
import { clockTime } from '../../../src/core/replay/view.js';

const pins = ['1', '8', 'A5', 'tab left'];

describe('readGoal', () => {
  it.each<[string, Control]>([
    ['95', { control: 'to-time', t: 95 }],
    ['0', { control: 'to-time', t: 0 }],
    [' 12.5 ', { control: 'to-time', t: 12.5 }],
    ['1:35', { control: 'to-time', t: 95 }],
    ['1:02:03.5', { control: 'to-time', t: 3723.5 }],
    ['8', { control: 'to-time', t: 8 }],
    ['pin:8', { control: 'to-pin', pin: '8' }],
    ['pin 8', { control: 'to-pin', pin: '8' }],
    ['Pin: a5', { control: 'to-pin', pin: 'A5' }],
    ['A5', { control: 'to-pin', pin: 'A5' }],
    ['pin:tab left', { control: 'to-pin', pin: 'tab left' }],
    ['event:200', { control: 'to-event', at: 200 }],
  ])('should read %j', (written, control) => {
    expect(readGoal(written, pins)).toEqual(control);
  });

  it.each([
    ['', 'write seconds'],
    ['-5', 'write seconds'],
    ['1e3', 'write seconds'],
    ['1:75', 'write seconds'],
    ['1:2:3:4', 'write seconds'],
    ['event:-1', 'write seconds'],
    ['event:99999999999999999999', 'write seconds'],
    ['soon', 'write seconds'],
    ['pin:9', 'there is no pin "9"'],
    ['pin:\u001b[31m', 'there is no pin'],
  ])('should refuse %j in one clean line', (written, says) => {
    expect(() => readGoal(written, pins)).toThrowError(RangeError);
    try {
      readGoal(written, pins);
    } catch (error) {
      expect((error as Error).message).toContain(says);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
      expect((error as Error).message).not.toMatch(/[\u0000-\u001f]/u);
    }
  });

  it('should read every time that is written out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), (seconds) => {
        expect(readGoal(clockTime(seconds), [])).toEqual({ control: 'to-time', t: seconds });
      }),
      { seed: 35 },
    );
  });
});
