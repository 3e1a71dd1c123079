// `share redact`: a session without the customer's data, as a file.
import { Command } from 'commander';
import { cleanText } from '../../core/clean-text.js';
import { english } from '../../core/words/english.js';
import { writeOut } from '../../store/write-out.js';
import { type SayOptions, sayer } from '../say.js';
import { redactedLines } from './redacted-lines.js';

interface RedactOptions extends SayOptions {
  readonly out: string;
}

const examples = `
Examples:
  pinwalk share redact session.jsonl --out for-the-course.jsonl
  pinwalk report for-the-course.jsonl
      a report that names nobody`;

export const redactCommand = (): Command =>
  new Command('redact')
    .description("write a session without the customer's data")
    .argument('<session>', 'a saved session')
    .requiredOption('--out <file>', 'the new session file')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = (session: string, options: RedactOptions): void => {
  const { out } = options;
  const lines = [...redactedLines(session)];
  const fingerprint = lines.at(-1)?.fingerprint ?? '';
  writeOut(out, lines.map(({ line }) => `${line}\n`).join(''), { force: false });
  const said = english.share.redacted(cleanText(out, 300), lines.length);
  sayer(options)(said, { type: 'session-redacted', file: out, events: lines.length, fingerprint });
};
