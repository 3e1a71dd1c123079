import { describe, expect, it } from 'vitest';
import { selectStrip } from '../../../src/core/select/strip.js';
import { steppedBench } from '../../ui/support/bench-session.js';

describe('strip of pins', () => {
  it('should follow the rows of the connector', () => {
    const rows = selectStrip(steppedBench().session.state);
    expect(rows.map(({ row, cells }) => [row, cells.length])).toEqual([
      [1, 20],
      [2, 20],
    ]);
    expect(rows.flatMap(({ cells }) => cells).map(({ pin }) => pin)).toEqual(
      Array.from({ length: 40 }, (_, at) => String(at + 1)),
    );
  });

  it('should mark one place and the verdicts before it', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until((state) => state.cursor === 3 && state.contact.rest === null);
    const cells = selectStrip(session.state).flatMap((row) => row.cells);
    expect(cells.filter(({ here }) => here).map(({ pin }) => pin)).toEqual(['4']);
    expect(cells.slice(0, 4).map(({ verdict }) => verdict)).toEqual([
      'normal',
      'normal',
      'normal',
      'unread',
    ]);
  });

  it('should put pins of no row into one', () => {
    const { state } = steppedBench().session;
    const pins = state.plan.pins.map((pin) => ({ ...pin, row: undefined }));
    const rows = selectStrip({ ...state, plan: { ...state.plan, pins } });
    expect(rows).toHaveLength(1);
    expect(rows[0]?.row).toBeNull();
    expect(rows[0]?.cells).toHaveLength(40);
  });
});
