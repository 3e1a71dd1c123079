// `config`: where the settings lie, what holds, and what each means.
import { Command } from 'commander';
import { cleanText } from '../core/clean-text.js';
import { configKeys } from '../core/config/config-format.js';
import { configSchema } from '../core/json-schema.js';
import { english } from '../core/words/english.js';
import { configPath, readConfig, writeStarter } from '../store/config-file.js';
import { dataFolder } from '../store/data-folder.js';
import { FileError } from '../store/file-error.js';
import { say } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface ConfigOptions {
  readonly config?: string;
  readonly init?: boolean;
  readonly explain?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk config
      where the configuration lies and what holds
  pinwalk config --explain
      every key, with what it means
  pinwalk config --init
      writes one to begin with, and the schema by which editors explain the keys
  pinwalk config --config ./bench-two.json`;

export const configCommand = (): Command =>
  new Command('config')
    .description('show the settings in force, explain them, or write a file to begin with')
    .option('--init', 'write a configuration to begin with')
    .option('--explain', 'say what every key means')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action((_options, command: Command) => run(command.optsWithGlobals()));

const words = english.config;

const run = (options: ConfigOptions): void => {
  if (options.explain) explain(options);
  else if (options.init) init(options);
  else show(options);
};

const explain = ({ json }: ConfigOptions): void => {
  for (const key of configKeys) {
    const { means, usual } = words.keys[key];
    say(json, `${key.padEnd(15)} ${means} (${words.usual}: ${usual})`, { key, means, usual });
  }
};

const init = ({ config, json }: ConfigOptions): void => {
  const path = config ?? configPath();
  const starter = { reportLanguage: 'en', dataFolder: dataFolder() } as const;
  try {
    writeStarter(path, starter, configSchema(words));
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    throw new UserError(error.message, exitCodes.unwritten);
  }
  say(json, words.written(cleanText(path, 300)), { type: 'config-written', file: path });
};

const show = ({ config: asked, json }: ConfigOptions): void => {
  const { path, found, config } = readConfig(asked);
  const shown = cleanText(path, 300);
  say(json, found ? words.read(shown) : words.notThere(shown), { file: path, found });
  for (const key of configKeys) {
    const value = config[key];
    const told =
      value === undefined
        ? `${words.keys[key].usual} (${words.usual})`
        : `${inWords(value)} (${words.fromFile})`;
    say(json, `${key.padEnd(15)} ${told}`, {
      key,
      value: value ?? null,
      from: value === undefined ? 'usual' : 'file',
    });
  }
};

const inWords = (value: string | object): string =>
  cleanText(typeof value === 'string' ? value : JSON.stringify(value), 300);
