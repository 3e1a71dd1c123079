// What comes before a walk: intake and cautions, and residual volts once the session's file is there to hold them.
import type { Command } from 'commander';
import type { WalkEvent } from '../core/events.js';
import { cautionsFor } from '../core/job/cautions.js';
import { type Given, givenEvents, joinGiven } from '../core/job/given.js';
import type { Job } from '../core/job/job.js';
import { residualPlaces } from '../core/job/residual.js';
import { triage } from '../core/job/triage.js';
import type { Driver } from '../core/meter/driver-format.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { Reading } from '../core/reading.js';
import { describeTriage } from '../core/words/describe-triage.js';
import { english } from '../core/words/english.js';
import type { Feed } from '../session/ports.js';
import { askAtTerminal } from './asking.js';
import { askCautions, confirmed, sayCautions } from './cautions.js';
import { inColumns } from './in-columns.js';
import { askIntake } from './intake-form.js';
import { attach, type IntakeOptions, intakeGiven, intakeOptions } from './intake-options.js';
import { measureResidual } from './residual.js';
import { complain, sayLine } from './say.js';
import { exitCodes, UserError } from './user-error.js';

export interface BeforeOptions extends IntakeOptions {
  readonly cautionsConfirmed?: boolean;
  readonly skipResidual?: string;
}

export interface BeforeWalk {
  readonly options: BeforeOptions;
  readonly profile: Profile;
  /** What a resumed session knows of the job already. */
  readonly job: Job;
  /** A board that was just brought in, not one that is taken up again. */
  readonly isNewJob: boolean;
  /** A meter on a board, not the virtual bench, a recording or typed values. */
  readonly realMeter: boolean;
  /** Somebody sits at a keyboard and sees questions. */
  readonly canAsk: boolean;
}

/** What may be told before a walk. */
export const beforeWalkOptions = (command: Command): Command =>
  cautionOptions(intakeOptions(command))
    .option(
      '--intake [file]',
      'ask for symptom, history and the like first, or take them from a file',
    )
    .option('--no-intake', 'do not ask for them');

/** What every walk on a real board needs to know. */
export const cautionOptions = (command: Command): Command =>
  command
    .option('--cautions-confirmed', 'the cautions hold; where nobody is at a keyboard')
    .option('--skip-residual <reason>', 'do not measure residual volts first, and why');

const words = english.job;

/** @returns the events, once it is known when the session is. @throws UserError when the cautions are not confirmed. */
export const intakeBefore = async (
  before: BeforeWalk,
): Promise<(t: number) => readonly WalkEvent[]> => {
  const { options, profile, job } = before;
  const told = intakeGiven(options, profile);
  const given = isAsked(before) ? joinGiven(told, await askAll(told, before)) : told;
  const by = await confirmCautions(before);
  const cautions = cautionsFor(profile, words.cautions.usual);
  return (t) => [
    ...givenEvents(given, profile, job, t),
    ...(by === null ? [] : confirmed(cautions, by, t)),
  ];
};

/** The form comes where it is asked for, and by itself where a new board lies under a real meter. */
const isAsked = ({ options, isNewJob, realMeter, canAsk }: BeforeWalk): boolean => {
  if (options.intake === true && !canAsk) {
    throw new UserError(english.refusals.noKeyboard, exitCodes.usage);
  }
  if (!canAsk || options.intake === false) return false;
  return options.intake === true || (realMeter && isNewJob && options.intake === undefined);
};

const askAll = (told: Given, { profile, job }: BeforeWalk): Promise<Given> =>
  askAtTerminal(async (asking) => {
    const known = joinGiven({ fields: job.intake, photos: [], observed: observedIn(job) }, told);
    const given = await askIntake(known, profile, { ...asking, attach }, words);
    const answers = { ...known.observed, ...given.observed };
    if (Object.keys(answers).length > 0) {
      const lines = describeTriage(triage(profile, answers), profile, words);
      for (const line of lines) asking.say(line);
    }
    return given;
  });

const observedIn = ({ observed }: Job): Given['observed'] =>
  Object.fromEntries(observed.map(({ observation, answer }) => [observation, answer]));

const confirmCautions = async (before: BeforeWalk): Promise<'keyboard' | 'option' | null> => {
  const { options, profile, job, realMeter, canAsk } = before;
  const cautions = cautionsFor(profile, words.cautions.usual);
  if (options.cautionsConfirmed) return 'option';
  if (!realMeter) {
    if (options.intake !== true) return null;
    sayCautions(cautions, tell, words);
    tell(words.cautions.onRealBoard);
    return null;
  }
  if (job.cautions.length > 0) return null;
  if (canAsk) {
    await askAtTerminal((asking) => askCautions(cautions, asking, words));
    return 'keyboard';
  }
  sayCautions(cautions, tell, words);
  throw new UserError(words.cautions.needed, exitCodes.usage);
};

/** Whole lines where no terminal shows them. */
const tell = (line: string): void => {
  const { isTTY, columns } = process.stderr;
  (isTTY ? inColumns(line, columns) : [line]).forEach(complain);
};

export interface ResidualParts {
  readonly before: BeforeWalk;
  readonly driver: Driver | null;
  /** The meter on DC volts. */
  readonly openVolts: () => Feed;
  readonly keep: (event: WalkEvent) => void;
  readonly now: () => number;
}

/** Before the first reading of a new session with a real meter. @throws UserError when the link is not there. */
export const residualBefore = async (parts: ResidualParts): Promise<void> => {
  const { before, driver, keep, now } = parts;
  const { options, job, realMeter, canAsk, profile } = before;
  if (!realMeter || job.residuals.length > 0) return;
  const skip = (reason: string): void => {
    keep({ type: 'residual-skipped', t: now(), reason });
    complain(words.residual.skipped(reason));
  };
  if (options.skipResidual !== undefined) return skip(options.skipResidual);
  if (!canAsk) return skip(words.residual.noKeyboard);
  const hasVolts = driver?.accuracy.some((row) => row.function === 'dc-volts') ?? false;
  const meter = listenToVolts(hasVolts ? parts.openVolts() : null);
  try {
    await askAtTerminal((asking) => {
      if (!hasVolts) asking.say(words.residual.typeThem);
      return measureResidual(
        residualPlaces(profile),
        { ...asking, readings: meter.readings, keep, now },
        words.residual,
      );
    });
  } finally {
    await meter.stop();
  }
  sayLine(words.residual.back(english.measure[profile.measure.function]));
};

/** Gathers what the meter says until it is asked for. */
const listenToVolts = (
  feed: Feed | null,
): { readonly readings: () => readonly Reading[]; readonly stop: () => Promise<void> } => {
  let heard: Reading[] = [];
  let failed: string | null = null;
  feed?.start((input) => {
    if (input.kind === 'reading') heard.push(input.reading);
    if (input.kind === 'link' && input.change === 'failed') failed = input.detail ?? '';
  });
  return {
    readings: () => {
      if (failed !== null) throw new UserError(failed, exitCodes.noLink);
      const since = heard;
      heard = [];
      return since;
    },
    stop: async () => feed?.stop(),
  };
};
