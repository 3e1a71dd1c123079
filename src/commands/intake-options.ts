// The options with which intake is told, the same for a walk and for a stored session, and what they come to.
import { dirname, isAbsolute, join } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { readDefinition } from '../core/definition/read-definition.js';
import { type Given, joinGiven, nothingGiven } from '../core/job/given.js';
import { intakeKind } from '../core/job/intake-file.js';
import { type Answer, answers, type DataMatters, dataMatters } from '../core/job/job-events.js';
import { nearestName } from '../core/nearest-name.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { FileError } from '../store/file-error.js';
import { hashFile } from '../store/hash-file.js';
import { readTextFile } from '../store/read-text-file.js';
import { exitCodes, UserError } from './user-error.js';

export interface IntakeOptions {
  readonly ticket?: string;
  readonly device?: string;
  readonly symptom?: string;
  readonly history?: string;
  readonly seen?: string;
  readonly dataMatters?: DataMatters;
  readonly photo?: readonly string[];
  readonly observe?: Readonly<Record<string, Answer>>;
  /** `true`: the questions at the keyboard; a text: a file. */
  readonly intake?: string | boolean;
}

export const intakeOptions = (command: Command): Command =>
  command
    .option('--ticket <text>', "the shop's reference")
    .option('--device <text>', 'what was brought in')
    .option('--symptom <text>', 'what the owner reports')
    .option('--history <text>', 'earlier repair, liquid, drop')
    .option('--seen <text>', 'what was seen under the microscope')
    .addOption(
      new Option('--data-matters <answer>', 'does the data matter to the owner?').choices(
        dataMatters,
      ),
    )
    .option('--photo <file...>', 'photos, kept by path and SHA-256')
    .addOption(observeOption());

export const observeOption = (): Option =>
  new Option(
    '--observe <what=answer...>',
    'what the device does: lamp=yes picture=no (yes, no, unknown)',
  ).argParser(readObservation);

const readObservation = (
  text: string,
  before: Readonly<Record<string, Answer>> = {},
): Readonly<Record<string, Answer>> => {
  const [, what, said] = /^([^=]{1,40})=(\w+)$/u.exec(text) ?? [];
  const answer = answers.find((known) => known === said);
  if (what === undefined || answer === undefined) {
    throw new InvalidArgumentError('write WHAT=yes, WHAT=no or WHAT=unknown');
  }
  return { ...before, [what]: answer };
};

/**
 * The file's words first, then the options'. Photos are hashed here, so that one that is not there stops the program
 * before anything begins.
 * @throws FileError for a file that cannot be used; UserError for an observation the profile does not ask for.
 */
export const intakeGiven = (options: IntakeOptions, profile: Profile): Given => {
  const fromFile = typeof options.intake === 'string' ? readIntake(options.intake) : nothingGiven;
  const { ticket, device, symptom, history, seen, dataMatters: matters } = options;
  const given = joinGiven(fromFile, {
    fields: {
      ...(ticket === undefined ? {} : { ticket }),
      ...(device === undefined ? {} : { device }),
      ...(symptom === undefined ? {} : { symptom }),
      ...(history === undefined ? {} : { history }),
      ...(seen === undefined ? {} : { seen }),
      ...(matters === undefined ? {} : { dataMatters: matters }),
    },
    photos: (options.photo ?? []).map(attach),
    observed: options.observe ?? {},
  });
  for (const name of Object.keys(given.observed)) requireObservation(name, profile);
  return given;
};

export const attach = (file: string): Given['photos'][number] => ({ file, ...hashFile(file) });

const readIntake = (file: string): Given => {
  const { content, problems } = readDefinition(intakeKind, readTextFile(file).text);
  if (content === undefined) throw new FileError(file, problems);
  const { $schema: _schema, format: _format, photos = [], observed = {}, ...fields } = content;
  const from = dirname(file);
  const attached = photos.map((photo) => attach(isAbsolute(photo) ? photo : join(from, photo)));
  return { fields, photos: attached, observed };
};

/** @throws UserError with the nearest name, or with those there are. */
export const requireObservation = (name: string, { observations = {}, id }: Profile): void => {
  if (Object.hasOwn(observations, name)) return;
  const known = Object.keys(observations);
  const near = nearestName(name, known);
  throw new UserError(english.refusals.noObservation(id, name, known, near), exitCodes.usage);
};
