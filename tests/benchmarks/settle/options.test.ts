// The benchmark's command line, what it hands to the built program, and what it reads back.
import { describe, expect, it } from 'vitest';
import { benchOptions, usage } from './options.js';
import { accuracyOptions } from './program-engine.js';
import { scoredEvent } from './scored-event.js';

describe('benchOptions', () => {
  it('has defaults', () => {
    expect(benchOptions([])).toMatchObject({
      seed: 1,
      pins: 3000,
      walks: null,
      engine: 'in-process',
    });
  });

  it('takes every option the usage names', () => {
    const named = [...usage.matchAll(/^ {2}(--[a-z-]+)( [A-Z]+)?/gmu)];
    expect(named.length).toBeGreaterThan(8);
    for (const [, option, value] of named) {
      const sample = option === '--mixture' ? 'all' : '2';
      expect(
        benchOptions(value === undefined ? [`${option}`] : [`${option}`, sample]),
      ).not.toBeNull();
    }
    expect(benchOptions(['--help'])).toBeNull();
  });

  it('refuses what it does not know', () => {
    expect(() => benchOptions(['--seed', '1.5'])).toThrow(
      /--seed needs a whole number, not "1.5"/u,
    );
    expect(() => benchOptions(['--mixture', 'x'])).toThrow(/no mixture "x"/u);
    expect(() => benchOptions(['--nothing'])).toThrow(TypeError);
  });
});

describe('accuracyOptions', () => {
  it('tells the program what the walk says, or nothing', () => {
    expect(accuracyOptions({ percent: 0.5, counts: 3, fullScaleCounts: 22_000 })).toEqual([
      '--accuracy',
      '0.5,3',
      '--counts',
      '22000',
    ]);
    expect(accuracyOptions(null)).toEqual([]);
  });
});

describe('scoredEvent', () => {
  it('reads the fixed fields and passes over other events', () => {
    const line =
      '{"seq":4,"type":"pin-settled","t":2,"pin":"1","line":"GND","value":0.3,"readings":5}';
    expect(scoredEvent(line)).toMatchObject({ type: 'pin-settled', t: 2, pin: '1', value: 0.3 });
    expect(scoredEvent('{"seq":5,"type":"note-taken","t":3}')).toMatchObject({
      type: 'note-taken',
    });
  });

  it('refuses a broken event and a line that is no JSON', () => {
    expect(() => scoredEvent('{"type":"pin-settled","t":2}')).toThrow(/pin/u);
    expect(() => scoredEvent('{"type":"pin-judged","t":2,"pin":"1","verdict":"fine"}')).toThrow();
    expect(() => scoredEvent('walk finished')).toThrow(SyntaxError);
  });
});
