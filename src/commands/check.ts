// `check`: is this driver, profile, session or reading log sound, and what is to be done if not?
import { Command } from 'commander';
import { cleanText } from '../core/clean-text.js';
import { formatProblem, isError } from '../core/problems.js';
import { checkFile, type FileCheck } from '../store/check-file.js';
import { listDefinitions } from '../store/load-definitions.js';
import { say, sayLine, sayObject } from './say.js';
import { exitCodes } from './user-error.js';

interface CheckOptions {
  readonly list?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk check my-connector.json
  pinwalk check ~/.local/share/pinwalk/sessions/*.jsonl
  pinwalk check --list
      the profiles and drivers that can be named by their id`;

export const checkCommand = (): Command =>
  new Command('check')
    .description('validate drivers, profiles, sessions and reading logs: the line and the fix')
    .argument('[files...]', 'files to check')
    .option('--list', 'list the profiles and drivers that are known by id')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(check);

const check = (files: readonly string[], options: CheckOptions, command: Command): void => {
  if (files.length === 0 && !options.list) command.error('name a file to check, or give --list');
  if (options.list) {
    for (const kind of ['profile', 'driver'] as const) {
      for (const { content, path } of listDefinitions(kind)) {
        const { id, title } = content;
        say(options.json, `${kind}  ${id}  ${title}`, { kind, id, title, path });
      }
    }
  }
  for (const file of files) {
    const found = checkFile(file);
    const sound = !found.problems.some(isError);
    if (!sound) process.exitCode = exitCodes.badFile;
    if (options.json) sayObject({ file, sound, ...found });
    else for (const line of textLines(cleanText(file, 300), found, sound)) sayLine(line);
  }
};

const textLines = (file: string, found: FileCheck, sound: boolean): string[] => {
  const lines = found.problems.map((problem) => formatProblem(file, problem));
  return sound ? [...lines, `${file}: ${found.kind}: ${found.summary}`] : lines;
};
