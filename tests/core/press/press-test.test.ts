import { describe, expect, it } from 'vitest';
import type { Input } from '../../../src/core/inputs.js';
import { setupForLine } from '../../../src/core/press/press-setup.js';
import { createPressTest, nextCue, pressStep } from '../../../src/core/press/press-test.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { profileFormat } from '../../../src/core/profile/profile-format.js';
import { scriptedPress, setup } from './scripted-press.js';

const fold = (inputs: readonly Input[]) =>
  inputs.reduce((step, input) => pressStep(step.state, input), { state: createPressTest(setup) });

const upTo = (inputs: readonly Input[], endS: number): Input[] =>
  inputs.filter((input) => (input.kind === 'reading' ? input.reading.t : input.t) < endS);

describe('pressStep', () => {
  it('gives its result at the closing release and not before', () => {
    const inputs = scriptedPress();
    const early = fold(inputs.slice(0, -1));
    expect(early).not.toHaveProperty('result');
    expect(fold(inputs)).toMatchObject({ result: { finding: 'loose', cycles: 4, stops: true } });
  });

  it('lets pass what is neither a reading nor a cue', () => {
    const { state } = fold(scriptedPress());
    const note: Input = { kind: 'act', t: 30, act: { act: 'note', text: 'warm' } };
    const lost: Input = { kind: 'link', t: 31, change: 'lost' };
    expect(pressStep(state, note)).toEqual({ state });
    expect(pressStep(state, lost)).toEqual({ state });
  });

  it('leaves a state it was given untouched', () => {
    const { state } = fold(upTo(scriptedPress(), 9));
    const copy = structuredClone(state);
    for (const input of scriptedPress()) pressStep(state, input);
    expect(state).toEqual(copy);
  });
});

describe('nextCue', () => {
  it('presses first, releases after a press, and goes on until the test can stop', () => {
    const inputs = scriptedPress();
    const cycleS = 4.5;
    expect(nextCue(createPressTest(setup), 2)).toBe('press');
    expect(nextCue(fold(upTo(inputs, 3)).state, 4)).toBe('release');
    const endOf = (cycle: number): number => 2 + cycle * cycleS;
    const cues = [1, 2, 3, 4].map((cycle) =>
      nextCue(fold(upTo(inputs, endOf(cycle))).state, endOf(cycle)),
    );
    expect(cues).toEqual(['press', 'press', 'press', 'release']);
  });

  it('asks for another cycle after a missed press', () => {
    const inputs = scriptedPress({ missed: [2] });
    expect(nextCue(fold(upTo(inputs, 20)).state, 20)).toBe('press');
  });
});

describe('setupForLine', () => {
  const profile = profileFormat.parse({
    format: 'pinwalk-profile/1',
    id: 'small',
    title: 'Three pins, invented',
    provenance: { by: 'tests', date: '2026-01-31', how: 'invented' },
    measure: { function: 'resistance', polarity: 'red-walks' },
    connector: {
      id: 'J1',
      pins: [
        { pin: '1', line: 'D0_P' },
        { pin: '2', line: 'VBUS' },
        { pin: '3', line: 'NC' },
      ],
    },
    lines: {
      D0_P: { kind: 'signal', expect: { resistance: { nominal: 388, tolerance: 0.1 } } },
      VBUS: { kind: 'supply', limits: { short: 1.5 } },
      NC: { kind: 'unused' },
    },
  });
  const plan = planWalk(profile);

  it('takes normal, limits and charging from the plan', () => {
    const { normal, ...rest } = setupForLine(plan, 'D0_P', 'FL2');
    expect(rest).toEqual({
      line: 'D0_P',
      part: 'FL2',
      function: 'resistance',
      polarity: 'red-walks',
      shortLimit: 5,
      openLimit: null,
      charges: false,
    });
    expect(normal?.low).toBeCloseTo(349.2, 9);
    expect(normal?.high).toBeCloseTo(426.8, 9);
    expect(setupForLine(plan, 'VBUS', null)).toMatchObject({
      normal: null,
      shortLimit: 1.5,
      charges: true,
    });
  });

  it('has no normal for a line that is to read overload', () => {
    expect(setupForLine(plan, 'NC', null).normal).toBeNull();
  });

  it('refuses a line on no pin', () => {
    expect(() => setupForLine(plan, 'D9', null)).toThrow(/D9/);
  });
});
