import { describe, expect, it } from 'vitest';
import { judgeRecord } from '../../../src/core/press/judge-record.js';
import { seeded } from '../shared/random.js';
import { readMeter } from './bench-meter.js';
import { runPressTrial } from './generate-press.js';
import { imitators, tryImitator } from './imitators.js';
import { pressKinds, rightFinding } from './press-kinds.js';
import { shareTable, truthTable } from './press-tables.js';
import { missedReach, type PressOutcome, scorePress } from './score-press.js';
import { drawSlipping } from './slips.js';

const trials = 40;

const run = pressKinds.map((kind) => ({
  kind,
  trials: Array.from({ length: trials }, (_, i) => runPressTrial(kind, `small/${kind}/${i}`)),
}));

const outcomes: PressOutcome[] = run.flatMap(({ trials: all }) =>
  all.map(({ kind, result, naive, lastsS }) => ({
    kind,
    finding: result.finding,
    cycles: result.cycles,
    naive,
    lastsS,
  })),
);

describe('the press benchmark in small', () => {
  it.each(run)('finds what is true of $kind', ({ kind, trials: all }) => {
    const findings = all.map(({ result }) => result.finding);
    const right = rightFinding[kind];
    if (right === null) {
      expect(findings.filter((finding) => /loose|cracked|bridged/.test(finding))).toEqual([]);
    } else {
      const found = findings.filter((finding) => finding === right).length;
      expect(found).toBeGreaterThanOrEqual(trials - 1);
    }
  });

  it('meets its reach, with a naive rule beside it that most slipping probes fool', () => {
    const scores = pressKinds.map((kind) => scorePress(kind, outcomes));
    expect(missedReach(scores)).toEqual([]);
    const slipping = scores.find(({ kind }) => kind === 'slipping');
    expect(slipping?.naiveLoose.share).toBeGreaterThan(0.6);
    expect(slipping?.falseAlarms.count).toBe(0);
  });

  it.each(run)('gives on the record of $kind what it gave live', ({ trials: all }) => {
    for (const { setup, inputs, result } of all) expect(judgeRecord(setup, inputs)).toEqual(result);
  });

  it('gives the same trial for the same seed, another for another', () => {
    const once = runPressTrial('sticky', 'seed');
    expect(runPressTrial('sticky', 'seed')).toEqual(once);
    expect(runPressTrial('sticky', 'other').inputs).not.toEqual(once.inputs);
  });

  it('is not imitated by a rhythm at its own pace', () => {
    const rhythm = imitators([10]).find(({ name }) => name.includes('rhythm'));
    expect(rhythm).toBeDefined();
    if (rhythm !== undefined) expect(tryImitator(rhythm, 20, 'small').count).toBe(0);
  });
});

describe('what the benchmark measures with', () => {
  const meter = { updateS: 0.1, phaseS: 0, aperture: 1, noise: 0, resolution: 0.1, settleS: 0.001 };
  const change = (t: number, condition: 'contact' | 'open') => ({ t, condition, value: 388 });

  it('reads overload until contact, an odd value or overload across it, then the value', () => {
    const changes = [change(-1, 'open'), change(0.27, 'contact')];
    const readings = readMeter(meter, changes, 0, 0.55, seeded('meter'));
    expect(readings.map((reading) => ('value' in reading ? reading.value : 'overload'))).toEqual([
      'overload',
      'overload',
      'overload',
      expect.closeTo(388, 6),
      expect.closeTo(388, 6),
    ]);
  });

  it('never lets a slipping probe see a cue: its slips depend on the seed alone', () => {
    const first = drawSlipping(seeded('slips'), 60, 388);
    expect(drawSlipping(seeded('slips'), 60, 388)).toEqual(first);
    expect(first.slips.length).toBeGreaterThan(0);
  });

  it('says what is missed', () => {
    const outcome = (finding: PressOutcome['finding']): PressOutcome => ({
      kind: 'sticky',
      finding,
      cycles: 5,
      lastsS: 30,
      naive: 'loose',
    });
    const score = scorePress('sticky', [outcome('loose'), outcome('cracked')]);
    expect(missedReach([score])).toEqual([
      'sticky: 1 of 2 found',
      'sticky: 1 of 2 false',
      'sticky: median 5 cycles',
    ]);
    expect(truthTable([score])).toContain('sticky');
    expect(shareTable([score])).toContain('50.00 %');
    expect(() => scorePress('loose', [])).toThrow(RangeError);
  });
});
