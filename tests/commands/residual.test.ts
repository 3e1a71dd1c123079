import { describe, expect, it } from 'vitest';
import { measureResidual } from '../../src/commands/residual.js';
import type { WalkEvent } from '../../src/core/events.js';
import type { Reading } from '../../src/core/reading.js';
import { english } from '../../src/core/words/english.js';
import { asked } from './asked.js';

const volts = (...values: number[]): Reading[] =>
  values.map((value, t) => ({ t, function: 'dc-volts', value }));
const places = [
  { line: 'VDD', pin: '2' },
  { line: 'CORE', pin: '7' },
];

/** What the meter says after each time the probe is placed. */
const measure = async (answers: string[], heard: Reading[][]) => {
  const terminal = asked(...answers);
  const kept: WalkEvent[] = [];
  let calls = 0;
  await measureResidual(
    places,
    {
      ...terminal,
      // Every second call forgets what came before the probe was there.
      readings: () => (calls++ % 2 === 0 ? [] : (heard.shift() ?? [])),
      keep: (event) => void kept.push(event),
      now: () => 5,
    },
    english.job.residual,
  );
  return { kept, said: terminal.said };
};
const still = volts(0.001, 0.001, 0.001);

describe('residual volts at the keyboard', () => {
  it('measures each supply with the meter', async () => {
    const { kept } = await measure(['', ''], [still, volts(-0.02, -0.02, -0.02)]);
    expect(kept).toEqual([
      ...[
        { line: 'VDD', pin: '2', volts: 0.001 },
        { line: 'CORE', pin: '7', volts: -0.02 },
      ].map((place) => ({ type: 'residual-measured', t: 5, limit: 0.05, by: 'meter', ...place })),
    ]);
  });

  it('stops at a charged line until it is discharged, and keeps both readings', async () => {
    const { kept, said } = await measure(['', '', ''], [volts(12.4, 12.4, 12.4), still, still]);
    expect(
      kept.map((event) => event.type === 'residual-measured' && [event.line, event.volts]),
    ).toEqual([
      ['VDD', 12.4],
      ['VDD', 0.001],
      ['CORE', 0.001],
    ]);
    expect(said).toContain(english.job.residual.again);
    expect(said).toContain('VDD: 12.4 V, still charged');
  });

  it('says when the dial stands wrong, the display is held or the reading moves, and keeps none of it', async () => {
    const ohms: Reading[] = [{ t: 1, function: 'resistance', value: 0 }];
    const held: Reading[] = [{ t: 1, function: 'dc-volts', value: 0, flags: ['hold'] }];
    const { kept, said } = await measure(
      ['', '', '', '', '', ''],
      [ohms, held, volts(2, 1, 0.4), [], still, still],
    );
    expect(kept).toHaveLength(2);
    const { turnDial, held: isHeld, restless, nothing } = english.job.residual;
    expect(said).toEqual(expect.arrayContaining([turnDial, isHeld, restless, nothing]));
  });

  it('takes volts that are typed, and says so', async () => {
    const { kept, said } = await measure(['0,01', 'abc', '-0.03 V'], []);
    expect(kept).toMatchObject([
      { volts: 0.01, by: 'typed' },
      { volts: -0.03, by: 'typed' },
    ]);
    expect(said).toContain(english.job.residual.notVolts('abc'));
  });

  it('is left out only with a reason in the record', async () => {
    const { kept } = await measure(['', 's', 'no supply \u001b[2J here'], [still]);
    expect(kept[1]).toEqual({
      type: 'residual-skipped',
      t: 5,
      reason: 'no supply ␛[2J here',
    });
    const { kept: silent } = await measure(['s', ''], []);
    expect(silent).toMatchObject([{ reason: english.job.residual.askedNot }]);
  });
});
