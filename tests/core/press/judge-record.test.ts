import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../../src/core/inputs.js';
import { judgeRecord } from '../../../src/core/press/judge-record.js';
import { type PressScript, readingOf, scriptedPress, setup } from './scripted-press.js';

const findingOf = (changes: Partial<PressScript>, other = {}): string =>
  judgeRecord({ ...setup, ...other }, scriptedPress(changes)).finding;

describe('a press test that answers', () => {
  it('gives 1/70 for four cycles told apart (Fisher 1935, The Design of Experiments, ch. 2; from memory)', () => {
    const result = judgeRecord(setup, scriptedPress());

    expect(result).toMatchObject({ line: 'D0_P', part: 'FL2', finding: 'loose', cycles: 4 });
    expect(result.pValue).toBeCloseTo(1 / 70, 12);
    // Counted by hand below in false-alarm.test.ts.
    expect(result.adjustedPValue).toBeCloseTo(0.0274725, 6);
    expect(result).toMatchObject({ answered: 4, stops: true, pressedValue: 388 });
    expect(result.releasedValue).toBeNull();
  });

  it('gives 17/70 and no finding for one swap (R documentation of fisher.test, tea-drinker example)', () => {
    const touched = { from: 4.1, to: 6.45, shows: 388 } as const;
    const result = judgeRecord(setup, scriptedPress({ missed: [1], disturbances: [touched] }));

    expect(result.pValue).toBeCloseTo(17 / 70, 12);
    expect(result.finding).toBe('inconclusive');
  });

  it.each([
    { finding: 'loose', rests: 'overload', pressed: 388 },
    { finding: 'cracked', rests: 388, pressed: 'overload' },
    { finding: 'bridged', rests: 388, pressed: 0.4 },
    { finding: 'bridged', rests: 0.4, pressed: 388 },
    { finding: 'loose', rests: 12_000, pressed: 388 },
    { finding: 'steady-open', rests: 'overload', pressed: 'overload' },
    { finding: 'steady', rests: 388, pressed: 388 },
    { finding: 'steady', rests: 0.4, pressed: 0.4 },
    { finding: 'steady', rests: 12_000, pressed: 12_000 },
  ] as const)('finds $finding where $rests turns to $pressed', ({ finding, rests, pressed }) => {
    expect(findingOf({ rests, pressed })).toBe(finding);
  });

  it.each([
    { finding: 'loose', rests: 'overload', pressed: 388 },
    { finding: 'cracked', rests: 388, pressed: 'overload' },
    { finding: 'bridged', rests: 388, pressed: 0.4 },
    { finding: 'bridged', rests: 388, pressed: 190 },
    { finding: 'steady', rests: 388, pressed: 391 },
    { finding: 'steady-open', rests: 'overload', pressed: 'overload' },
  ] as const)(
    'finds $finding without a known normal where $rests turns to $pressed',
    ({ finding, rests, pressed }) => {
      expect(findingOf({ rests, pressed }, { normal: null })).toBe(finding);
    },
  );

  it('finds a loose joint at every lag, rate and stickiness the design names', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 0.55, noNaN: true }),
        fc.double({ min: 2.5, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lagS, rate, sticksS) => {
          const windows = { pressS: 2.6, releaseS: 3.6 };
          expect(findingOf({ lagS, rate, sticksS, ...windows })).toBe('loose');
        },
      ),
      { seed: 51, numRuns: 100 },
    );
  });

  it('goes on over a missed press and finds the joint with more cycles', () => {
    expect(findingOf({ missed: [1], cycles: 4 })).toBe('inconclusive');
    expect(findingOf({ missed: [1], cycles: 5 })).toBe('loose');
    expect(findingOf({ missed: [1, 3, 6], cycles: 8 })).toBe('loose');
  });

  it('is not misled by bounces and a slip inside presses', () => {
    const disturbances = [
      { from: 2.35, to: 2.4, shows: 'overload' },
      { from: 3.1, to: 3.18, shows: 'overload' },
      { from: 7.4, to: 7.75, shows: 'overload' },
    ] as const;
    expect(findingOf({ rate: 50, disturbances })).toBe('loose');
    expect(findingOf({ rate: 4, disturbances })).toBe('loose');
  });

  it('is not misled by one odd reading of a slow meter between presses', () => {
    const touch = { from: 4.9, to: 5.3, shows: 388 } as const;
    const windows = { pressS: 2.5, releaseS: 3.5 };
    expect(findingOf({ rate: 2.5, disturbances: [touch], ...windows })).toBe('loose');
  });

  it('sees a slip that begins before a cue and ends after it as a slip', () => {
    const slip = { from: 6.3, to: 6.7, shows: 'overload' } as const;
    expect(findingOf({ rests: 388, pressed: 0.4, rate: 20, disturbances: [slip] })).toBe('bridged');
  });
});

describe('times of the answer (published-checks, section 12)', () => {
  it('judges a change 160 ms after the cue like one after 400 ms, at 4 readings/s', () => {
    const soon = judgeRecord(setup, scriptedPress({ rate: 4, lagS: 0.16 }));
    const late = judgeRecord(setup, scriptedPress({ rate: 4, lagS: 0.4 }));

    expect(soon.finding).toBe('loose');
    expect({ finding: soon.finding, p: soon.pValue, n: soon.cycles }).toEqual({
      finding: late.finding,
      p: late.pValue,
      n: late.cycles,
    });
  });

  it('never takes a change before the cue for an answer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 0, noNaN: true }),
        fc.constantFrom(2.5, 4, 10, 50),
        (beforeS, rate) => {
          // Sooner by a period, so that a reading before the cue shows it; later the readings cannot tell.
          const lagS = beforeS - 1 / rate;
          const windows = { pressS: 3, releaseS: 3.5, cycles: 8 };
          const result = judgeRecord(setup, scriptedPress({ lagS, rate, ...windows }));
          expect(result.finding).toBe('inconclusive');
        },
      ),
      { seed: 12, numRuns: 100 },
    );
  });

  it('refuses by the edges what the windows alone would call certain', () => {
    const early = judgeRecord(setup, scriptedPress({ lagS: -0.06, rate: 50, cycles: 8 }));
    expect(early.pValue).toBeCloseTo(1 / 12_870, 12);
    expect(early).toMatchObject({ finding: 'inconclusive', answered: 0 });
  });

  it('takes a change sooner than a person can answer for chance', () => {
    expect(findingOf({ lagS: 0.04, rate: 50, cycles: 8 })).toBe('inconclusive');
  });

  it('takes a change long after the cue for chance', () => {
    expect(findingOf({ lagS: 1.5, rate: 10, pressS: 3, releaseS: 4, cycles: 8 })).toBe(
      'inconclusive',
    );
  });
});

describe('what is no evidence', () => {
  const withEach = (inputs: Input[], change: (reading: object) => object): Input[] =>
    inputs.map((input) =>
      input.kind === 'reading'
        ? ({ kind: 'reading', reading: change(input.reading) } as Input)
        : input,
    );

  it.each([
    ['hold', { flags: ['hold'] }],
    ['relative', { flags: ['relative'] }],
    ['another function', { function: 'dc-volts' }],
    ['the other polarity', { polarity: 'black-walks' }],
  ])('%s', (_, extra) => {
    const inputs = withEach(scriptedPress(), (reading) => ({ ...reading, ...extra }));
    const result = judgeRecord({ ...setup, polarity: 'red-walks' }, inputs);
    expect(result.finding).toBe('inconclusive');
    expect(result.judged.every(({ press }) => press.side === null)).toBe(true);
  });

  it('a low battery is said elsewhere and does not spoil the test', () => {
    const inputs = withEach(scriptedPress(), (reading) => ({ ...reading, flags: ['low-battery'] }));
    expect(judgeRecord(setup, inputs).finding).toBe('loose');
  });

  it('residual charge, blanks and garbled frames', () => {
    expect(findingOf({ pressed: -40 })).toBe('inconclusive');
    expect(findingOf({ rests: -40 })).toBe('inconclusive');
    expect(findingOf({ pressed: 'blank' })).toBe('inconclusive');
  });

  it('values that differ from press to press', () => {
    const disturbances = [380, 300, 480, 400].map((shows, i) => ({
      from: 2.3 + 4.5 * i,
      to: 4.3 + 4.5 * i,
      shows,
    }));
    expect(findingOf({ disturbances })).toBe('inconclusive');
  });

  it('no readings, no cues, too few cycles', () => {
    expect(judgeRecord(setup, [])).toMatchObject({ finding: 'inconclusive', cycles: 0, pValue: 1 });
    const three = judgeRecord(setup, scriptedPress({ cycles: 3 }));
    expect(three).toMatchObject({ finding: 'inconclusive', cycles: 3, stops: false });
    expect(three.pValue).toBeCloseTo(1 / 20, 12);
  });
});

describe('records as they come', () => {
  it('needs no closing release when readings go on after the last press', () => {
    expect(judgeRecord(setup, scriptedPress({ closing: false }))).toMatchObject({
      finding: 'loose',
      cycles: 4,
    });
  });

  it('lets the rest before the first press stand in where the record ends with the last press', () => {
    const inputs = scriptedPress({ closing: false }).filter(
      (input) => (input.kind === 'reading' ? input.reading.t : input.t) <= 2 + 3 * 4.5 + 2,
    );
    const result = judgeRecord(setup, inputs);
    expect(result).toMatchObject({ finding: 'loose', cycles: 4 });
    expect(result.pValue).toBeCloseTo(1 / 70, 12);
  });

  it('may begin with a release that tells the hand to rest', () => {
    const told: Input = { kind: 'cue', t: 0, cue: 'release' };
    expect(judgeRecord(setup, [told, ...scriptedPress()])).toMatchObject({
      finding: 'loose',
      cycles: 4,
    });
  });

  it('may begin at the first press', () => {
    expect(findingOf({ leadS: 0 })).toBe('loose');
  });

  it('counts every cycle up to the eighth, also against an early success', () => {
    const six = judgeRecord(setup, scriptedPress({ cycles: 6 }));
    expect(six.pValue).toBeCloseTo(1 / 924, 12);
    const faded = judgeRecord(setup, scriptedPress({ cycles: 8, missed: [4, 5, 6, 7] }));
    expect(faded).toMatchObject({ finding: 'inconclusive', cycles: 8 });
    expect(judgeRecord(setup, scriptedPress({ cycles: 10 })).cycles).toBe(8);
  });

  it('ignores a press told twice', () => {
    const inputs = scriptedPress();
    const at = inputs.findIndex((input) => input.kind === 'cue');
    const again: Input = { kind: 'cue', t: 2.05, cue: 'press' };
    const told = [...inputs.slice(0, at + 1), again, ...inputs.slice(at + 1)];
    expect(judgeRecord(setup, told)).toMatchObject({ finding: 'loose', cycles: 4 });
  });

  it('does not depend on where time starts', () => {
    const shifted = scriptedPress({ rate: 8 }).map((input): Input => {
      if (input.kind === 'reading') {
        return { kind: 'reading', reading: { ...input.reading, t: input.reading.t + 1024 } };
      }
      return { ...input, t: input.t + 1024 };
    });
    const { finding, pValue, answered } = judgeRecord(setup, shifted);
    const here = judgeRecord(setup, scriptedPress({ rate: 8 }));
    expect({ finding, pValue, answered }).toEqual({
      finding: here.finding,
      pValue: here.pValue,
      answered: here.answered,
    });
  });

  it('takes readings that come in bursts of one time', () => {
    const inputs = scriptedPress({ rate: 5 }).flatMap((input): Input[] =>
      input.kind === 'reading' ? [input, input, input] : [input],
    );
    expect(judgeRecord(setup, inputs).finding).toBe('loose');
  });

  it('judges own marks where there are no cues', () => {
    const marked = scriptedPress({ lagS: 0, closing: false }).map((input): Input => {
      if (input.kind !== 'cue') return input;
      return {
        kind: 'act',
        t: input.t,
        act: { act: input.cue === 'press' ? 'pressing' : 'released' },
      };
    });
    expect(judgeRecord(setup, marked)).toMatchObject({ finding: 'loose', cycles: 4 });
  });
});

describe('a line with bulk capacitance', () => {
  it('counts any value as contact while it charges', () => {
    const charging = scriptedPress({ pressed: 3 }).map((input): Input => {
      if (input.kind !== 'reading' || !('value' in input.reading)) return input;
      const { t } = input.reading;
      return { kind: 'reading', reading: readingOf(t, 2 + 60 * ((t - 2) % 4.5)) };
    });
    expect(judgeRecord(setup, charging).finding).toBe('inconclusive');
    expect(judgeRecord({ ...setup, charges: true }, charging).finding).toBe('loose');
  });
});

describe('an autoranging meter', () => {
  it('is waited for where its ranging time is told', () => {
    const slow = { lagS: 0.4, pressS: 5, releaseS: 5, cycles: 4 };
    const ranged = scriptedPress(slow).map((input): Input => {
      if (input.kind !== 'reading') return input;
      const intoPress = (input.reading.t - 2) % 10;
      const ranging = intoPress > 0.35 && intoPress < 2.15;
      return ranging ? { kind: 'reading', reading: readingOf(input.reading.t, 'blank') } : input;
    });
    expect(judgeRecord(setup, ranged).finding).toBe('inconclusive');
    expect(judgeRecord({ ...setup, rangingS: 2 }, ranged).finding).toBe('loose');
  });
});
