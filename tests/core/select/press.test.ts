import { describe, expect, it } from 'vitest';
import { type PressView, selectPress } from '../../../src/core/select/press.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { steppedBench } from '../../ui/support/bench-session.js';

const pressing = () => {
  const bench = steppedBench({ scenario: 'loose-filter', pace: 'steady', seed: 3 }, 'each');
  const seen = (): PressView => {
    const view = selectPress(bench.session.state);
    if (view === null) throw new Error('no press test is shown');
    return view;
  };
  const at = (done: (state: WalkState) => boolean): PressView => {
    expect(bench.until(done)).toBe(true);
    return seen();
  };
  return { ...bench, at, seen };
};

const windowsGiven = ({ press }: WalkState): number => press?.test?.windows.length ?? 0;

describe('what there is to see of a press test', () => {
  it('should show nothing while nothing is pressed', () => {
    const { session, until } = steppedBench({ scenario: 'healthy' });
    until(({ cursor }) => cursor === 3);
    expect(selectPress(session.state)).toBeNull();
  });

  it('should ask to hold still, to press and to release by turns, and count what the windows show', () => {
    const { at } = pressing();
    const first = at(({ press }) => press?.place === 'FL2');
    expect(first).toMatchObject({ pin: '5', line: 'LANE1_P', prompt: 'hold-still', cycle: 1 });
    expect(first.places).toMatchObject([{ place: 'FL2', sham: false, stands: 'now' }]);
    expect(at(({ press }) => press?.test?.cue?.cue === 'press').prompt).toBe('press');
    expect(at(({ press }) => press?.test?.cue?.cue === 'release').prompt).toBe('release');
    const third = at((state) => windowsGiven(state) === 5);
    expect(third.cycle).toBe(3);
    expect(third.tally).toEqual({
      press: { normal: 3, open: 0, high: 0, short: 0, low: 0, unclear: 0 },
      release: { normal: 0, open: 2, high: 0, short: 0, low: 0, unclear: 0 },
    });
    expect(third.windows.map(({ cue, shown }) => [cue, shown])).toEqual([
      ['press', 'normal'],
      ['release', 'open'],
      ['press', 'normal'],
      ['release', 'open'],
      ['press', 'normal'],
      ['release', null],
    ]);
  });

  it('should call what lies beside the normal high where the line reads high, not open', () => {
    const { session, until } = pressing();
    until((state) => windowsGiven(state) === 5);
    const { state } = session;
    const pins = state.pins.map((pin) => ({ ...pin, verdict: 'high' as const }));
    const view = selectPress({ ...state, pins });
    expect(view?.tally.release).toMatchObject({ open: 0, high: 2 });
    expect(view?.windows[1]?.shown).toBe('high');
  });

  it('should go to bare board after a part that answers, keeping what was found and its windows', () => {
    const { at } = pressing();
    const sham = at(({ press }) => press?.place === 'bare-board');
    expect(sham.places).toMatchObject([
      { place: 'FL2', stands: 'done', result: { finding: 'loose', cycles: 4 } },
      { place: 'bare-board', sham: true, stands: 'now', result: null },
    ]);
    expect(sham.here?.sham).toBe(true);
    expect(sham.latest?.place).toBe('FL2');
    expect(sham.windows.filter(({ shown }) => shown !== null)).toHaveLength(8);
    expect(sham.tally.press.normal).toBe(0);
  });

  it('should show the outcome until the probe goes on, and then the walk again', () => {
    const { at, session, until } = pressing();
    const done = at(({ press, lastPress }) => press === null && lastPress !== null);
    expect(done).toMatchObject({
      prompt: 'done',
      here: undefined,
      compared: { outcome: 'one', parts: ['FL2'] },
    });
    expect(done.places.map(({ stands }) => stands)).toEqual(['done', 'done']);
    until(({ contact }) => contact.touch !== null);
    expect(selectPress(session.state)).toBeNull();
  });
});
