import { describe, expect, it } from 'vitest';
import { BenchNameError, parseBenchName, usualBench } from '../../src/bench/bench-name.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import { checkFaults } from '../../src/bench/faults.js';
import { atSpeed, checkPace, easyPace, steadyPace, usualPace } from '../../src/bench/pace.js';
import { scenarioNames, scenarioOf } from '../../src/bench/scenarios.js';
import { shippedDriver } from '../support/driver-files.js';
import { profileIds, shippedProfile } from './support/profile-files.js';

describe('the name of a virtual bench', () => {
  it('should be a scenario, and begin calm and the same each time', () => {
    expect(parseBenchName('demo')).toEqual(usualBench);
    expect(parseBenchName('healthy')).toEqual({ ...usualBench, scenario: 'healthy' });
  });

  it('should take options', () => {
    expect(
      parseBenchName(
        'short?seed=7&rate=2.5&counts=4000&pace=usual&speed=3&answers=key&probes=proposed',
      ),
    ).toEqual({
      scenario: 'short',
      seed: 7,
      rate: 2.5,
      counts: 4000,
      pace: 'usual',
      speed: 3,
      answers: 'key',
      probes: 'proposed',
      donor: false,
    });
  });

  it.each([
    ['demmo', 'did you mean demo?'],
    ['', 'known are demo,'],
    ['demo?sed=1', 'did you mean seed?'],
    ['demo?seed=x', 'seed must be 0 to'],
    ['demo?seed=1.5', 'whole number'],
    ['demo?rate=2', 'rate must be 2.5 to 50'],
    ['demo?rate=51', 'rate must be 2.5 to 50'],
    ['demo?counts=3999', 'counts must be 4000 to 60000'],
    ['demo?pace=hurry', 'known are easy, usual, steady'],
    ['demo?seed=1&seed=2', 'seed is given twice'],
    ['demo?__proto__=1', 'no option'],
    ['demo?rate=\u001b[31m', 'rate must be'],
  ])('should refuse %j in one line', (text, says) => {
    expect(() => parseBenchName(text)).toThrow(BenchNameError);
    try {
      parseBenchName(text);
    } catch (error) {
      const { message } = error as BenchNameError;
      expect(message).toContain(says);
      expect(message).not.toMatch(/\p{Cc}/u);
    }
  });
});

describe('the scenarios', () => {
  it('should be ten or more, demo first', () => {
    expect(scenarioNames.length).toBeGreaterThanOrEqual(10);
    expect(scenarioNames[0]).toBe('demo');
  });

  it.each(scenarioNames)('%s should fit the demo profile and say what it is about', (name) => {
    const profile = shippedProfile('demo');
    const { about, faults } = scenarioOf(name);
    expect(about).toMatch(/^an? |^both |^one /u);
    expect(() => checkFaults(profile, faults(profile))).not.toThrow();
  });

  it.each(profileIds)('demo and healthy should fit %s', (id) => {
    const profile = shippedProfile(id);
    expect(scenarioOf('healthy').faults(profile)).toEqual([]);
    expect(scenarioOf('demo').faults(profile)).toHaveLength(2);
  });

  it('should say what a profile lacks for it', () => {
    expect(() => scenarioOf('cracked').faults(shippedProfile('blank-24'))).toThrow(
      /blank-24 knows no part along/u,
    );
  });

  it('should refuse a meter that cannot be imitated, before anything runs', () => {
    const driver = shippedDriver('stream-fields-flags');
    const { speak: _, ...mute } = driver;
    const ohmsOnly = {
      ...driver,
      accuracy: driver.accuracy.filter((row) => row.function === 'resistance'),
    };
    const parts = { bench: usualBench, profile: shippedProfile('demo'), hears: true };
    expect(() => benchSetup({ ...parts, driver: mute })).toThrow('does not say how');
    expect(() =>
      benchSetup({
        ...parts,
        driver: ohmsOnly,
        measure: { function: 'diode', polarity: 'black-walks' },
      }),
    ).toThrow('has no range for diode');
  });

  it('should carry through to the meter', () => {
    const parts = {
      driver: shippedDriver('stream-fields-flags'),
      profile: shippedProfile('demo'),
      hears: true,
    };
    const shifted = benchSetup({ ...parts, bench: parseBenchName('shifted-leaky?rate=5') });
    expect(shifted.error.scale).toBe(1.06);
    expect(shifted.readingsPerS).toBe(5);
    const deaf = benchSetup({ ...parts, hears: false, bench: parseBenchName('demo?answers=key') });
    expect(deaf.hears).toBeNull();
  });
});

describe('a pace', () => {
  it.each([usualPace, easyPace, steadyPace, atSpeed(usualPace, 4)])(
    'should be possible',
    (pace) => {
      expect(() => checkPace(pace)).not.toThrow();
    },
  );

  it('should be refused when it cannot be', () => {
    expect(() => checkPace({ ...usualPace, slipChance: 1.2 })).toThrow('slipChance');
    expect(() => checkPace({ ...usualPace, liftS: [0.9, 0.5] })).toThrow('liftS');
  });

  it('should hurry the hands, leave slips as they are, and lift no faster than anybody can', () => {
    const fast = atSpeed(usualPace, 2);
    expect(fast.sureS).toEqual([0.3, 0.5]);
    expect(fast.liftS).toEqual([0.5, 0.5]);
    expect(atSpeed(usualPace, 1.25).liftS).toEqual([0.5, 0.72]);
    expect(atSpeed(usualPace, 0.5).liftS).toEqual([1, 1.8]);
    expect(fast.slipS).toEqual(usualPace.slipS);
  });
});
