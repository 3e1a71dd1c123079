// The press view on terminals of every size, with and without colours and Unicode.
import { stripVTControlCharacters } from 'node:util';
import { render } from 'ink-testing-library';
import stringWidth from 'string-width';
import { afterEach, describe, expect, it } from 'vitest';
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

const pressingAt = (columns: number, rows: number, unicode = true) => {
  const { session, until } = steppedBench(
    { scenario: 'loose-filter', pace: 'steady', seed: 3 },
    'each',
  );
  const { words, keys } = surroundings;
  const theme = createTheme({ colours: 'none', background: 'dark', unicode });
  const store = createScreenStore({
    session,
    words,
    keys,
    repeat: () => undefined,
    notices: createNotices(),
  });
  const at = { columns, rows };
  const size = { subscribe: () => () => undefined, snapshot: () => at };
  const app = (): React.ReactElement => (
    <App store={store} size={size} surroundings={{ ...surroundings, theme }} />
  );
  const { lastFrame, rerender, unmount } = render(app());
  closing.push(() => {
    unmount();
    store.stop();
  });
  return {
    shownWhen(done: (state: WalkState) => boolean): readonly string[] {
      expect(until(done)).toBe(true);
      store.refresh();
      rerender(app());
      return stripVTControlCharacters(lastFrame() ?? '').split('\n');
    },
  };
};

const windowsGiven = ({ press }: WalkState): number => press?.test?.windows.length ?? 0;

const sizes = [
  [80, 24],
  [120, 40],
  [66, 20],
  [40, 10],
  [36, 8],
] as const;

describe('the press view', () => {
  it.each(sizes)('should stay within %i by %i all through a test', (columns, rows) => {
    const { shownWhen } = pressingAt(columns, rows);
    const moments: readonly ((state: WalkState) => boolean)[] = [
      ({ press }) => press !== null,
      (state) => windowsGiven(state) === 1,
      (state) => windowsGiven(state) === 4,
      ({ press }) => press?.place === 'bare-board',
      ({ press, lastPress }) => press === null && lastPress !== null,
    ];
    for (const moment of moments) {
      const shown = shownWhen(moment);
      expect(shown.length).toBeLessThanOrEqual(rows - 1);
      for (const row of shown) expect(stringWidth(row)).toBeLessThanOrEqual(columns);
    }
  });

  it('should show windows, tally, place and count at 80 by 24', () => {
    const { shownWhen } = pressingAt(80, 24);
    const text = shownWhen((state) => windowsGiven(state) === 5).join('\n');
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
    const { shownWhen } = pressingAt(80, 24);
    const text = shownWhen(({ press }) => press?.place === 'bare-board').join('\n');
    expect(text).toContain('reading returns when FL2 is pressed: loose joint');
    expect(text).toContain('p 0.014, adjusted 0.027');
    expect(text).toContain('▸ bare board, beside the part');
    expect(text).toContain('FL2          loose  4/4  p 0.014');
  });

  it('should say at the end which place answers most', () => {
    const { shownWhen } = pressingAt(120, 40);
    const shown = shownWhen(({ press, lastPress }) => press === null && lastPress !== null);
    expect(shown.join('\n')).toContain('FL2 answers most');
  });

  it('should do with ASCII', () => {
    const { shownWhen } = pressingAt(80, 24, false);
    const text = shownWhen((state) => windowsGiven(state) === 5).join('\n');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: everything outside ASCII is looked for
    expect(text.replace(/Ω/gu, '')).toMatch(/^[\x00-\x7f]*$/u);
    expect(text).toContain('= reads   o open');
  });
});
