// The press view on terminals of every size, with and without colours and Unicode.
import { stripVTControlCharacters } from 'node:util';
import { render } from 'ink-testing-library';
import stringWidth from 'string-width';
import { afterEach, describe, expect, it } from 'vitest';
import type { ScenarioName } from '../../../src/bench/scenarios.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { createNotices } from '../../../src/session/notices.js';
import { App } from '../../../src/ui/app.js';
import { createScreenStore } from '../../../src/ui/live/screen-store.js';
import { createTheme } from '../../../src/ui/theme.js';
import { steppedBench } from '../support/bench-session.js';
import { surroundings } from '../support/show.js';

const closing: (() => void)[] = [];
afterEach(() => {
  for (const close of closing.splice(0)) close();
});

/** One session, shown on several terminals at once. */
const pressing = (...terminals: readonly Terminal[]) => pressingOn('loose-filter', ...terminals);

const pressingOn = (scenario: ScenarioName, ...terminals: readonly Terminal[]) => {
  const { session, until } = steppedBench({ scenario, pace: 'steady', seed: 3 }, 'each');
  const { words, keys } = surroundings;
  const store = createScreenStore({
    session,
    words,
    keys,
    repeat: () => undefined,
    notices: createNotices(),
  });
  closing.push(() => store.stop());
  const screens = terminals.map(({ columns, rows, unicode = true }) => {
    const theme = createTheme({ colours: 'none', background: 'dark', unicode });
    const size = { columns, rows };
    const sized = { subscribe: () => () => undefined, snapshot: () => size };
    const app = (): React.ReactElement => (
      <App store={store} size={sized} surroundings={{ ...surroundings, theme }} />
    );
    const shown = render(app());
    closing.push(() => shown.unmount());
    return { ...shown, app };
  });
  return {
    shownWhen(done: (state: WalkState) => boolean): readonly (readonly string[])[] {
      expect(until(done)).toBe(true);
      store.refresh();
      return screens.map(({ rerender, app, lastFrame }) => {
        rerender(app());
        return stripVTControlCharacters(lastFrame() ?? '').split('\n');
      });
    },
  };
};

interface Terminal {
  readonly columns: number;
  readonly rows: number;
  readonly unicode?: boolean;
}

const windowsGiven = ({ press }: WalkState): number => press?.test?.windows.length ?? 0;

const sizes: readonly Terminal[] = [
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
  { columns: 66, rows: 20 },
  { columns: 40, rows: 10 },
  { columns: 36, rows: 8 },
];

describe('the press view', () => {
  it('should stay within every terminal all through a test', () => {
    const { shownWhen } = pressing(...sizes);
    const moments: readonly ((state: WalkState) => boolean)[] = [
      ({ press }) => press !== null,
      (state) => windowsGiven(state) === 1,
      (state) => windowsGiven(state) === 4,
      ({ press }) => press?.place === 'bare-board',
      ({ press, lastPress }) => press === null && lastPress !== null,
    ];
    for (const moment of moments) {
      shownWhen(moment).forEach((shown, at) => {
        const { columns, rows } = sizes[at] as Terminal;
        expect(shown.length).toBeLessThanOrEqual(rows - 1);
        for (const row of shown) expect(stringWidth(row)).toBeLessThanOrEqual(columns);
      });
    }
  });

  it('should show windows, tally, place and count at 80 by 24', () => {
    const { shownWhen } = pressing({ columns: 80, rows: 24 });
    const [shown = []] = shownWhen((state) => windowsGiven(state) === 5);
    const text = shown.join('\n');
    for (const words of [
      'Press test LANE1_P  pin 5',
      'place 1 of 1',
      '▸ FL2',
      'cycle 3, decided after 4 to 8',
      'release',
      'press',
      '━ reads   ○ open    ? unclear',
      'pressed     3         0         0',
      'released    0         2         0',
      'd end the test',
    ]) {
      expect(text).toContain(words);
    }
  });

  it('should say what was found, with its p-value, while bare board is pressed', () => {
    const { shownWhen } = pressing({ columns: 80, rows: 24 });
    const [shown = []] = shownWhen(({ press }) => press?.place === 'bare-board');
    const text = shown.join('\n');
    expect(text).toContain('reading returns when FL2 is pressed: loose joint');
    expect(text).toContain('p 0.014, adjusted 0.027');
    expect(text).toContain('▸ bare board, beside the part');
    expect(text).toContain('FL2          loose  4/4  p 0.014');
  });

  it('should say at the end which place answers most', () => {
    const { shownWhen } = pressing({ columns: 120, rows: 40 });
    const [shown = []] = shownWhen(({ press, lastPress }) => press === null && lastPress !== null);
    expect(shown.join('\n')).toContain('FL2 answers most');
  });

  it('should call a leaky line low, not short, and show the whole of a reading in kΩ', () => {
    const { shownWhen } = pressingOn('demo', { columns: 80, rows: 24 });
    const [shown = []] = shownWhen(
      (state) => state.press?.line === 'TOUCH_INT' && windowsGiven(state) === 3,
    );
    const text = shown.join('\n');
    expect(text).toMatch(/━ reads {3}▾ low {5}\? unclear/u);
    expect(text).toMatch(/pressed {5}0 {9}2 {9}0/u);
    expect(text).not.toContain('short');
    // The large letters of the reading: the last ones are those of Ω.
    expect(shown.slice(4, 9).join('\n')).not.toContain('…');
    expect(shown.slice(4, 9).join('\n')).toMatch(/▄█ █▄ *$/mu);
  });

  it('should do with ASCII', () => {
    const { shownWhen } = pressing({ columns: 80, rows: 24, unicode: false });
    const [shown = []] = shownWhen((state) => windowsGiven(state) === 5);
    const text = shown.join('\n');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: everything outside ASCII is looked for
    expect(text.replace(/Ω/gu, '')).toMatch(/^[\x00-\x7f]*$/u);
    expect(text).toContain('= reads   o open');
  });
});
