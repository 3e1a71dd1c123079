import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import { render } from 'ink-testing-library';
import stringWidth from 'string-width';
import { afterEach, describe, expect, it } from 'vitest';
import type { Act } from '../../../src/core/inputs.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { createNotices } from '../../../src/session/notices.js';
import { App } from '../../../src/ui/app.js';
import { createScreenStore, type ScreenStore } from '../../../src/ui/live/screen-store.js';
import { type SteppedBench, steppedBench } from '../support/bench-session.js';
import { surroundings } from '../support/show.js';

interface Shown {
  readonly rows: () => readonly string[];
  readonly press: (...names: readonly string[]) => void;
  readonly until: SteppedBench['until'];
  readonly state: () => WalkState;
  readonly acts: readonly Act[];
}

const closing: (() => void)[] = [];
afterEach(() => {
  for (const close of closing.splice(0)) close();
});

const showAt = (
  columns: number,
  rows: number,
  scenario: 'healthy' | 'demo' | 'everything' = 'healthy',
  donor = false,
): Shown => {
  const { session, until } = steppedBench({ scenario, donor });
  const acts: Act[] = [];
  const watched = {
    get state() {
      return session.state;
    },
    get trouble() {
      return session.trouble;
    },
    act(act: Act) {
      acts.push(act);
      session.act(act);
    },
    follow: session.follow,
    onChange: session.onChange,
    ended: session.ended,
  };
  const { words, keys } = surroundings;
  const store: ScreenStore = createScreenStore({
    session: watched,
    words,
    keys,
    repeat: () => undefined,
    notices: createNotices(),
  });
  const size = { subscribe: () => () => undefined, snapshot: sizeOf(columns, rows) };
  const app = (): React.ReactElement => (
    <App store={store} size={size} surroundings={surroundings} />
  );
  const { lastFrame, rerender, unmount } = render(app());
  closing.push(() => {
    unmount();
    store.stop();
  });
  return {
    rows: () => {
      store.refresh();
      rerender(app());
      return stripVTControlCharacters(lastFrame() ?? '').split('\n');
    },
    press: (...names) => {
      for (const name of names) store.press({ name, text: name.length === 1 ? name : '' });
    },
    until,
    state: () => session.state,
    acts,
  };
};

const sizeOf = (columns: number, rows: number) => {
  const size = { columns, rows };
  return () => size;
};

describe('screens', () => {
  it('should show all of a walk of two boards in turns at 80 by 24', () => {
    const { rows, until } = showAt(80, 24, 'demo', true);
    expect(until(({ cursor, contact }) => cursor === 4 && contact.rest !== null)).toBe(true);
    expect(rows().length).toBeLessThanOrEqual(23);
    for (const row of rows()) expect(stringWidth(row)).toBeLessThanOrEqual(80);
    const onPatient = rows().join('\n');
    for (const words of ['PATIENT', 'LANE0_P', '2 of 40', 'next donor 3', '38 to go'])
      expect(onPatient).toContain(words);
    expect(until(({ cursor, contact }) => cursor === 5 && contact.rest !== null)).toBe(true);
    const onDonor = rows().join('\n');
    for (const words of ['DONOR', 'LANE0_N', '3 of 40', 'next patient 3', 'SIMULATED'])
      expect(onDonor).toContain(words);
  });

  it('should show all of the walk at 80 by 24', () => {
    const { rows, until } = showAt(80, 24);
    until(({ cursor, contact }) => cursor === 8 && contact.rest !== null);
    const text = rows().join('\n');
    expect(rows().length).toBeLessThanOrEqual(23);
    for (const words of [
      'J7  Display connector',
      'SIMULATED',
      'row 1',
      'row 2',
      'resistance to ground',
      'range 600 Ω',
      'red lead walks',
      'LANE2_P  Picture data 2, positive',
      'next 9 LANE2_N',
      'expected 391 Ω',
      'high',
      'low',
      '8 normal',
      '32 to go',
      'o open',
      'q quit',
    ]) {
      expect(text).toContain(words);
    }
  });

  it('should use a large terminal for larger digits and a list', () => {
    const { rows, until } = showAt(120, 40);
    until(({ cursor, contact }) => cursor === 8 && contact.rest !== null);
    const shown = rows();
    expect(shown.length).toBeLessThanOrEqual(39);
    expect(shown.join('\n')).toContain('Not normal');
    expect(shown.join('\n')).toContain('Latest');
    expect(shown.filter((row) => row.includes('████')).length).toBeGreaterThanOrEqual(8);
  });

  it('should keep what decides at 40 by 10', () => {
    const { rows, until } = showAt(40, 10);
    until(({ cursor, contact }) => cursor === 8 && contact.rest !== null);
    const shown = rows();
    expect(shown.length).toBeLessThanOrEqual(9);
    const text = shown.join('\n');
    for (const words of ['8▌ LANE2_P', 'SIM', '9 LANE2_N', '━ NORMAL', '8 normal', 'q quit']) {
      expect(text).toContain(words);
    }
  });

  it('should say in a line when the terminal is too small', () => {
    const { rows } = showAt(30, 6);
    expect(rows().join(' ')).toContain('at least 36');
  });

  it('should lead through the ground check', () => {
    const { rows, until, press, acts } = showAt(80, 24);
    expect(rows().join('\n')).toContain('ground 1 of 2: touch a ground pin');
    until(({ grounds }) => grounds === 1);
    expect(rows().join('\n')).toContain('ground 2 of 2: lift');
    press('s');
    expect(acts).toEqual([{ act: 'skip' }]);
    expect(rows().join('\n')).toContain('next 2 LANE0_P');
  });

  it('should ask unmissably at every size that has a screen', () => {
    for (const [columns, height] of [
      [80, 24],
      [120, 40],
      [40, 10],
      [36, 8],
    ] as const) {
      const { rows, until } = showAt(columns, height, 'demo');
      expect(until(({ question }) => question?.question === 'open')).toBe(true);
      const text = rows().join('\n');
      expect(text).toContain('█▀▀▀');
      expect(text).toContain('Nothing is read at pin 5');
      expect(text).toContain('▐o open▌');
    }
  });

  it('should review what is not normal and go back to it', () => {
    const { rows, until, press, acts, state } = showAt(80, 24, 'demo');
    expect(until(({ stage }) => stage === 'finished')).toBe(true);
    const shown = rows();
    expect(shown.join('\n')).toMatch(/Not normal · \d/u);
    expect(shown.filter((row) => row.includes('▸'))).toHaveLength(1);
    expect(shown.join('\n')).toMatch(/mate 6 LANE1_N \d+\.\d Ω ━ normal/u);
    expect(shown.join('\n')).toMatch(/ J7 pin 5──\(TV1\) *──FL2 pad 1──FL2 *──FL2 pad 4──U5/u);
    expect(shown.join('\n')).toMatch(/╵ \d+ % /u);
    expect(shown.join('\n')).toMatch(/ f {2}Next best: /u);
    press('enter');
    expect(acts.map(({ act }) => act)).toEqual(['go-to']);
    expect(state().stage).toBe('walking');
    expect(rows().join('\n')).toContain('next');
    expect(rows().join('\n')).not.toContain('Not normal ·');
  });

  it('should say so when everything is normal, and leave at once', () => {
    const { rows, until, press, acts } = showAt(80, 24);
    expect(until(({ stage }) => stage === 'finished')).toBe(true);
    expect(rows().join('\n')).toContain('Every pin reads normal.');
    press('q');
    expect(acts).toEqual([{ act: 'quit' }]);
  });

  it('should show every key on a page of its own', () => {
    for (const [columns, height, quit] of [
      [80, 24, ' q ctrl'],
      [40, 10, ' q quit'],
    ] as const) {
      const { rows, press } = showAt(columns, height);
      press('?');
      const text = rows().join('\n');
      for (const words of ['open', 'note', 'pause', 'dismiss', ' v ', quit]) {
        expect(text).toContain(words);
      }
      press('x');
      expect(rows().join('\n')).toContain('1 of 40');
    }
  });

  it('should show why a key did nothing', () => {
    const { rows, until, press } = showAt(80, 24);
    until(({ cursor, contact }) => cursor === 3 && contact.rest === null);
    press('n');
    expect(rows().join('\n')).toContain('next: nothing is read at pin 4 yet');
  });

  it('should stop for a file that cannot be written', () => {
    const { rows, press } = showAt(80, 24);
    press('p');
    expect(rows().join('\n')).toContain('"p" to go on.');
  });

  it('should fit any terminal', () => {
    const states = [3, 30].map((seconds) => {
      const { session, clock } = steppedBench({ scenario: 'everything' });
      clock.run(seconds);
      return session;
    });
    fc.assert(
      fc.property(fc.constantFrom(...states), fc.nat(160), fc.nat(60), (session, columns, rows) => {
        const { words, keys } = surroundings;
        const store = createScreenStore({
          session,
          words,
          keys,
          repeat: () => undefined,
          notices: createNotices(),
        });
        const size = { subscribe: () => () => undefined, snapshot: sizeOf(columns, rows) };
        const { lastFrame, unmount } = render(
          <App store={store} size={size} surroundings={surroundings} />,
        );
        const frame = stripVTControlCharacters(lastFrame() ?? '').split('\n');
        unmount();
        store.stop();
        expect(frame.length).toBeLessThanOrEqual(Math.max(1, rows - 1));
        expect(Math.max(...frame.map((row) => stringWidth(row)))).toBeLessThanOrEqual(
          Math.max(1, columns),
        );
      }),
      { seed: 21, numRuns: 60 },
    );
  });
});
