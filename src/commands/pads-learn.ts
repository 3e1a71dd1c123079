// `pads learn`: the real pads, each touched once, in turn.
import { Command } from 'commander';
import { formatReading } from '../core/measure/format-reading.js';
import { padCommands } from '../core/pads/pad.js';
import type { PadFile } from '../core/pads/pad-file.js';
import { beginLearning, learnFrom, type PadLesson } from '../core/pads/pad-learner.js';
import { planWalk } from '../core/profile/plan.js';
import { siUnit } from '../core/reading.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import type { Feed } from '../session/ports.js';
import { loadProfile } from '../store/load-definitions.js';
import { writePads } from '../store/pad-file.js';
import { askedAccuracy } from './accuracy-option.js';
import { askedLink, askedMeasure, driverFor } from './asked-meter.js';
import { usualPadFile } from './choose-pads.js';
import { configuration } from './configuration.js';
import { linkKind, openFeed } from './open-feed.js';
import { type PadOptions, padOptions, rounded } from './pad-options.js';
import { ringBell, say, sayLine } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface LearnOptions extends PadOptions {
  readonly link?: string;
  readonly pads?: string;
}

const words = english.pads;

export const learnPadsExamples = `
Examples:
  pinwalk pads learn --link serial:/dev/ttyUSB0?baud=9600 --driver stream-value-unit --profile my-connector.json
  pinwalk pads learn --link virtual:pads --pads my-pads.json
      on the virtual bench, whose technician touches each in turn
  pinwalk check my-pads.json
  pinwalk walk … --pads my-pads.json
      without --pads a walk with a real meter listens to the pads learned last`;

export const learnPadsCommand = (): Command =>
  padOptions(
    new Command('learn')
      .description('learn the real pads: each is touched once, in turn')
      .option('--link <name>', 'the meter: serial:PATH, tcp://HOST:PORT, virtual:pads, log:FILE')
      .option('--profile <id or file>', 'refuse pads that read like a line of this connector')
      .option('--pads <file>', 'where to save them (default: where a walk looks for them)'),
  )
    .addHelpText('after', learnPadsExamples)
    .action(learn);

const learn = async (options: LearnOptions): Promise<void> => {
  const { link: usualLink, driver: usualDriver } = configuration();
  const link = askedLink(options.link ?? usualLink);
  const kind = linkKind(link);
  if (kind === 'stdin') {
    throw new UserError(english.refusals.padsTyped, exitCodes.usage);
  }
  const profile = options.profile === undefined ? null : loadProfile(options.profile).content;
  const asked = options.driver ?? (kind === 'virtual' ? undefined : usualDriver);
  const driver = driverFor(kind, asked)?.content ?? null;
  // The virtual bench alone needs a board beside the pads.
  const board = profile ?? loadProfile('demo').content;
  const measure = askedMeasure(options, board.measure);
  let badLog: string | null = null;
  const { feed } = openFeed({
    link,
    profile: board,
    measure,
    driver,
    clock: createMonotonicClock(),
    wait: false,
    logPace: 'fast',
    act: () => undefined,
    badLog: (says) => {
      badLog = says;
    },
  });
  const setup = {
    commands: options.commands ?? padCommands,
    function: measure.function,
    accuracy: askedAccuracy(options, driver, measure.function),
    plan: profile === null ? null : planWalk(profile, measure),
  };
  if (!options.json) sayLine(words.learning(measure.function, setup.commands.length));
  const pads = await lessonsOver(feed, setup, options.json ?? false);
  if (badLog !== null) throw new UserError(badLog, exitCodes.badFile);
  if (pads === null) throw new UserError(words.ended, exitCodes.noLink);
  const file = options.pads ?? usualPadFile();
  const content: PadFile = {
    format: 'pinwalk-pads/1',
    function: measure.function,
    learned: new Date().toISOString(),
    driver: driver?.id ?? null,
    pads: pads.map(({ command, value, standardUncertainty }) => ({
      command,
      value: rounded(value),
      standardUncertainty: rounded(standardUncertainty),
    })),
  };
  writePads(content, file);
  say(options.json, words.saved(file, pads.length), { type: 'pads-saved', file });
};

/** Runs the feed until every pad is learned; null where it ends before that. @throws UserError for a lost link. */
const lessonsOver = async (
  feed: Feed,
  setup: Parameters<typeof beginLearning>[0],
  json: boolean,
): Promise<PadFile['pads'] | null> => {
  const unit = siUnit(setup.function);
  const begun = beginLearning(setup);
  let { learner } = begun;
  const ended = await new Promise<PadFile['pads'] | string | null>((resolve) => {
    const tell = (lessons: readonly PadLesson[]): void => {
      for (const lesson of lessons) {
        if (lesson.lesson === 'done') {
          resolve([...lesson.pads]);
          return;
        }
        const line = inWords(lesson, learner.learned.length, setup.commands.length, unit);
        say(json, line, asObject(lesson));
        if (!json && process.stdout.isTTY) ringBell(bells[lesson.lesson]);
      }
    };
    tell(begun.lessons);
    const stop = (): void => resolve(null);
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, stop);
    feed.start((input) => {
      if (input.kind === 'link' && input.change === 'failed') resolve(input.detail ?? '');
      if (input.kind === 'link' && input.change === 'ended') resolve(null);
      if (input.kind !== 'reading') return;
      const step = learnFrom(learner, input.reading);
      learner = step.learner;
      tell(step.lessons);
    });
  });
  await feed.stop();
  if (typeof ended === 'string') throw new UserError(ended, exitCodes.noLink);
  return ended;
};

/** Heard without a look: one bell for a pad that was learned, two for one that was not. */
const bells = { wanted: 0, learned: 1, refused: 2 } as const;

type Told = Exclude<PadLesson, { lesson: 'done' }>;

const asObject = (lesson: Told): object => {
  switch (lesson.lesson) {
    case 'wanted':
      return { type: 'pad-wanted', command: lesson.command };
    case 'learned':
      return { type: 'pad-learned', ...lesson.pad };
    case 'refused':
      return { type: 'pad-refused', command: lesson.command, what: lesson.what };
  }
};

const inWords = (lesson: Told, learned: number, of: number, unit: string): string => {
  switch (lesson.lesson) {
    case 'wanted':
      return words.wanted(lesson.command, learned + 1, of);
    case 'learned': {
      const { command, value, standardUncertainty } = lesson.pad;
      return words.learned(command, formatReading(value, standardUncertainty, unit));
    }
    case 'refused':
      return words.refused(lesson.command, lesson.what);
  }
};
