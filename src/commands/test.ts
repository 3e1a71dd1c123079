// `test`: what was tested once the board is put together again: its draw on a bench supply, its functions.
import { Command, InvalidArgumentError, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { WalkEvent } from '../core/events.js';
import { drawJudgements, functionOutcomes } from '../core/rework/rework-events.js';
import { english } from '../core/words/english.js';
import { addToSession } from './add-to-session.js';
import type { FaceOptions } from './face.js';
import { exitCodes, UserError } from './user-error.js';

interface TestOptions extends FaceOptions {
  readonly draw?: (typeof drawJudgements)[number];
  readonly amperes?: number;
  readonly volts?: number;
  readonly limit?: number;
  readonly function?: string;
  readonly works?: (typeof functionOutcomes)[number];
  readonly note?: string;
}

const examples = `
Examples:
  pinwalk test session.jsonl --draw as-expected --amperes 0.12 --volts 4.0 --limit 0.5
  pinwalk test session.jsonl --function "picture and touch" --works yes

${english.rework.firstPower}`;

export const testCommand = (): Command =>
  new Command('test')
    .description('note the draw on the bench supply and function tests after rework')
    .argument('<session>', 'the saved session of the walk')
    .addOption(new Option('--draw <word>', 'the draw, judged').choices(drawJudgements))
    .option('--amperes <A>', 'the draw, read from the supply', readFigure)
    .option('--volts <V>', 'what the supply was set to', readFigure)
    .option('--limit <A>', 'the current limit that was set', readFigure)
    .option('--function <text>', 'what was tested')
    .addOption(new Option('--works <word>', 'whether it works').choices(functionOutcomes))
    .option('--note <text>', 'anything else')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(test);

const test = async (session: string, options: TestOptions): Promise<void> => {
  const { draw, amperes, volts, limit, works } = options;
  const note = options.note === undefined ? {} : { note: cleanText(options.note, 600) };
  if ((options.function === undefined) !== (works === undefined)) {
    throw new UserError(english.refusals.functionWithWorks, exitCodes.usage);
  }
  if (draw === undefined && [amperes, volts, limit].some((figure) => figure !== undefined)) {
    throw new UserError(english.refusals.drawNotJudged, exitCodes.usage);
  }
  if (draw === undefined && works === undefined) {
    throw new UserError(english.refusals.nothingToNote, exitCodes.usage);
  }
  await addToSession(session, options, ({ now }) => {
    const t = now();
    const events: WalkEvent[] = [];
    if (draw !== undefined) {
      events.push({
        type: 'power-checked',
        t,
        draw,
        ...(amperes === undefined ? {} : { amperes }),
        ...(volts === undefined ? {} : { volts }),
        ...(limit === undefined ? {} : { limit }),
        ...note,
      });
    }
    if (options.function !== undefined && works !== undefined) {
      const tested = cleanText(options.function, 200);
      events.push({ type: 'function-tested', t, tested, works, ...note });
    }
    return events;
  });
};

function readFigure(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !(value >= 0) || !Number.isFinite(value)) {
    throw new InvalidArgumentError('write a number');
  }
  return value;
}
