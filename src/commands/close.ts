// `close`: how a job ended. As repaired only on a good recheck made after the last rework, or with a reason.
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { WalkEvent } from '../core/events.js';
import { doubtAbout } from '../core/recheck/closing.js';
import { type JobOutcome, jobOutcomes } from '../core/rework/rework-events.js';
import { evolveRework, noRework, type ReworkState } from '../core/rework/rework-state.js';
import { english } from '../core/words/english.js';
import { addToSession } from './add-to-session.js';
import type { FaceOptions } from './face.js';
import { rechecksOf } from './job-rechecks.js';
import { exitCodes, UserError } from './user-error.js';

interface CloseOptions extends FaceOptions {
  readonly as: JobOutcome;
  readonly reason?: string;
  readonly cause?: string;
  readonly recheck?: string;
}

const examples = `
Examples:
  pinwalk close session.jsonl --as repaired --cause "FL2 pad 1"
      on the good recheck beside it
  pinwalk close session.jsonl --as not-repaired --reason "pad torn off under U5"
  pinwalk close session.jsonl --as repaired --reason "rechecked by hand, meter out for calibration"`;

export const closeCommand = (): Command =>
  new Command('close')
    .description('close a job: repaired, not repaired, or returned')
    .argument('<session>', 'the saved session of the walk')
    .addOption(new Option('--as <word>', 'how it ended').choices(jobOutcomes).makeOptionMandatory())
    .option('--reason <text>', 'why; needed for repaired without a good recheck')
    .option('--cause <place>', 'the joint or part that was at fault, as the profile names it')
    .option('--recheck <file>', 'the recheck it rests on (default: the last one of this session)')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(close);

const close = async (session: string, options: CloseOptions): Promise<void> => {
  const reason = options.reason === undefined ? '' : cleanText(options.reason, 600).trim();
  await addToSession(session, options, ({ opened, before, now }) => {
    const named = options.recheck === undefined ? [] : [options.recheck];
    const recheck = rechecksOf(session, opened, named).at(-1) ?? null;
    const rework = before.reduce<ReworkState>(evolveRework, noRework);
    const doubt = doubtAbout(rework, recheck);
    if (options.as === 'repaired' && doubt !== null && reason === '') {
      throw new UserError(english.refusals.notProven(english.rework.doubt[doubt]), exitCodes.usage);
    }
    const closed: WalkEvent = {
      type: 'job-closed',
      t: now(),
      as: options.as,
      ...(reason === '' ? {} : { reason }),
      ...(options.cause === undefined ? {} : { cause: cleanText(options.cause, 40) }),
      ...(recheck === null ? {} : { recheck: { file: recheck.file, begins: recheck.begins } }),
    };
    return [closed];
  });
};
