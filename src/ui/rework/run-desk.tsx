// The rework desk on a terminal: screen and keys until it is left. Restores the terminal whatever happens.
import { type ReactElement, useSyncExternalStore } from 'react';
import { firstPlace, firstSetting, partsByDoubt } from '../../core/rework/begin-desk.js';
import type { Words } from '../../core/words/words.js';
import type { ReworkDesk } from '../../session/rework-desk.js';
import { detectAppearance } from '../appearance.js';
import type { Surroundings } from '../context.js';
import { keyMapWith } from '../keys/key-map.js';
import type { Key } from '../keys/parse-keys.js';
import { type TerminalSize, watchSize } from '../live/terminal-size.js';
import { showOnTerminal } from '../on-terminal.js';
import { WholeScreen } from '../parts/whole-screen.js';
import { quitOnSignals } from '../signals.js';
import { type Appearance, createTheme } from '../theme.js';
import { type DeskMode, pressDeskKey } from './desk-mode.js';
import { DeskScreen } from './desk-screen.js';

export interface DeskOptions {
  readonly desk: ReworkDesk;
  readonly before: Parameters<typeof firstPlace>[0];
  readonly words: Words;
  readonly keys: Readonly<Record<string, readonly string[]>>;
  readonly appearance?: Partial<Appearance>;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
}

interface Shown {
  readonly mode: DeskMode;
  readonly refused: string | null;
}

const renewMs = 100;

/** @throws RangeError when `keys` is no key map; whatever the record throws when it cannot be written. */
export const runDesk = async (options: DeskOptions): Promise<void> => {
  const { desk, before, words, stdin = process.stdin, stdout = process.stdout } = options;
  const keys = keyMapWith(options.keys);
  const profile = desk.opened.profile.content;
  const theme = createTheme({
    ...detectAppearance(process.env, stdout.isTTY ? stdout.getColorDepth() : 1),
    ...options.appearance,
  });
  const parts = partsByDoubt(before, profile);
  let shown: Shown = {
    mode: {
      place: firstPlace(before, desk.state, profile),
      setting: firstSetting(desk.state),
      action: 'reflow',
      typing: null,
      notice: null,
    },
    refused: null,
  };
  const watchers = new Set<() => void>();
  let finish: () => void = () => undefined;
  let fail: (error: unknown) => void = () => undefined;
  const finished = new Promise<void>((resolve, reject) => {
    finish = resolve;
    fail = reject;
  });
  const renew = (next: Shown): void => {
    shown = next;
    for (const call of watchers) call();
  };
  const press = (key: Key): void => {
    const step = pressDeskKey(shown.mode, key, { state: desk.state, profile, parts, keys });
    try {
      const refusals = step.acts.map((act) => desk.act(act));
      const refused = refusals.find((why) => why !== null) ?? null;
      renew({ mode: step.mode, refused: refused === null ? null : words.rework.refused[refused] });
    } catch (error) {
      fail(error);
    }
    if (step.quit === true) finish();
  };
  const timer = setInterval(() => {
    if (desk.state.heat !== null) renew({ ...shown });
  }, renewMs);
  const source = {
    subscribe: (call: () => void) => {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    snapshot: () => shown,
  };
  const { simulated } = desk.opened;
  const stopListening = quitOnSignals(finish);
  try {
    await showOnTerminal(
      <Desk
        desk={desk}
        source={source}
        size={watchSize(stdout)}
        surroundings={{ words, theme, keys, profile, simulated }}
      />,
      { stdin, stdout, press, gone: finish, ended: finished },
    );
  } finally {
    clearInterval(timer);
    stopListening();
  }
};

interface DeskProps {
  readonly desk: ReworkDesk;
  readonly source: {
    readonly subscribe: (call: () => void) => () => void;
    readonly snapshot: () => Shown;
  };
  readonly size: TerminalSize;
  readonly surroundings: Surroundings;
}

const Desk = ({ desk, source, size, surroundings }: DeskProps): ReactElement => {
  const { mode, refused } = useSyncExternalStore(source.subscribe, source.snapshot);
  const { columns, rows } = useSyncExternalStore(size.subscribe, size.snapshot);
  const height = Math.max(1, rows - 1);
  return (
    <WholeScreen surroundings={surroundings} width={columns} height={height}>
      <DeskScreen desk={desk} mode={mode} refused={refused} width={columns} height={height} />
    </WholeScreen>
  );
};
