// Asks for a key or pedal for every act and returns those that were learnt, as data for a key map.
import { type ReactElement, useSyncExternalStore } from 'react';
import type { Words } from '../../core/words/words.js';
import { detectAppearance } from '../appearance.js';
import type { Surroundings } from '../context.js';
import { keyMapWith } from '../keys/key-map.js';
import type { Key } from '../keys/parse-keys.js';
import { type TerminalSize, watchSize } from '../live/terminal-size.js';
import { showOnTerminal } from '../on-terminal.js';
import { WholeScreen } from '../parts/whole-screen.js';
import { type Appearance, createTheme } from '../theme.js';
import { beginLearning, isLearnt, type Learning, learnKey } from './learn-keys.js';
import { LearnScreen } from './learn-screen.js';

export interface LearnerOptions {
  readonly words: Words;
  /** What is bound now, in place of the usual keys. */
  readonly keys?: Readonly<Record<string, readonly string[]>>;
  readonly appearance?: Partial<Appearance>;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
}

/** @throws RangeError when `keys` is no key map. */
export const runKeyLearner = async (options: LearnerOptions): Promise<Learning['learnt']> => {
  const { words, stdin = process.stdin, stdout = process.stdout } = options;
  const theme = createTheme({
    ...detectAppearance(process.env, stdout.isTTY ? stdout.getColorDepth() : 1),
    ...options.appearance,
  });
  const keys = keyMapWith(options.keys ?? {});
  const surroundings = { words, theme, keys, profile: null, simulated: false };
  let learning = beginLearning;
  const watchers = new Set<() => void>();
  let finish: () => void = () => undefined;
  const finished = new Promise<void>((resolve) => {
    finish = resolve;
  });
  const press = (key: Key): void => {
    const left = key.name === 'ctrl+c';
    if (!left) learning = learnKey(learning, key);
    for (const call of watchers) call();
    if (left || isLearnt(learning)) finish();
  };
  const source = {
    subscribe: (call: () => void) => {
      watchers.add(call);
      return () => watchers.delete(call);
    },
    snapshot: () => learning,
  };
  await showOnTerminal(
    <Learner source={source} size={watchSize(stdout)} surroundings={surroundings} />,
    { stdin, stdout, press, gone: finish, ended: finished },
  );
  return learning.learnt;
};

interface LearnerProps {
  readonly source: {
    readonly subscribe: (call: () => void) => () => void;
    readonly snapshot: () => Learning;
  };
  readonly size: TerminalSize;
  readonly surroundings: Surroundings;
}

const Learner = ({ source, size, surroundings }: LearnerProps): ReactElement => {
  const learning = useSyncExternalStore(source.subscribe, source.snapshot);
  const { columns, rows } = useSyncExternalStore(size.subscribe, size.snapshot);
  const height = Math.max(1, rows - 1);
  return (
    <WholeScreen surroundings={surroundings} width={columns} height={height}>
      <LearnScreen learning={learning} width={columns} height={height} />
    </WholeScreen>
  );
};
