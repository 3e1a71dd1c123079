// `keys`: which keys and pedals do what, and teaching the program others by pressing them.
import { Command } from 'commander';
import { english } from '../core/words/english.js';
import { screenActs } from '../core/words/screen-words.js';
import { forgetKeys, keyFilePath, readKeys, writeKeys } from '../store/key-file.js';
import { configuration } from './configuration.js';
import { canAsk } from './face.js';
import { complain, say } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface KeysOptions {
  readonly learn?: boolean;
  readonly reset?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk keys
  pinwalk keys --learn
      press the key or foot pedal for each act; F1 to F12 and beyond are told apart
  pinwalk keys --reset`;

export const keysCommand = (): Command =>
  new Command('keys')
    .description('show which keys and pedals do what, or teach others by pressing them')
    .option('--learn', 'ask for a key or pedal for every act')
    .option('--reset', 'go back to the usual keys')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(keys);

const longestAct = Math.max(...screenActs.map(({ length }) => length));

const keys = async ({ learn, reset, json }: KeysOptions): Promise<void> => {
  if (reset) forgetKeys(keysFile());
  if (learn) await learnKeys();
  const { keyMapWith } = await import('../ui/keys/key-map.js');
  const map = orUsage(() => keyMapWith(readKeys(keysFile())));
  for (const act of screenActs) {
    const names = map[act];
    const line = `${act.padEnd(longestAct)}  ${names.join(', ').padEnd(14)} ${english.screen.keyMeans[act]}`;
    say(json, line, { act, keys: names });
  }
};

const keysFile = (): string => configuration().keysFile ?? keyFilePath();

const learnKeys = async (): Promise<void> => {
  if (!canAsk({})) {
    throw new UserError(english.refusals.noTerminal, exitCodes.usage);
  }
  const { runKeyLearner } = await import('../ui/learn/run-key-learner.js');
  const known = readKeys(keysFile());
  const learnt = await runKeyLearner({ words: english, keys: known });
  writeKeys(
    Object.fromEntries(
      Object.entries({ ...known, ...learnt }).map(([act, names]) => [act, [...names]]),
    ),
    keysFile(),
  );
  complain(english.savedIn(keysFile()));
};

const orUsage = <T>(make: () => T): T => {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) {
      throw new UserError(english.refusals.behind(keysFile(), error.message), exitCodes.badFile);
    }
    throw error;
  }
};
