// `intake`: shows the intake of a stored session, adds to it or corrects it. Nothing is rewritten; what is said last
// counts.
import { Command } from 'commander';
import { isJobEvent } from '../core/event-families.js';
import type { Numbered, WalkEvent } from '../core/events.js';
import { type Given, givenEvents } from '../core/job/given.js';
import { emptyJob, foldJob, type Job, jobEvents } from '../core/job/job.js';
import type { Profile } from '../core/profile/profile-format.js';
import { describeJob } from '../core/words/describe-job.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { readSession } from '../store/journal-reader.js';
import { openLaterWork } from '../store/later-work.js';
import { type IntakeOptions, intakeGiven, intakeOptions } from './intake-options.js';
import { refuseNoSession } from './named-session.js';
import { complain, sayLine, sayObject } from './say.js';
import { wallClock } from './wall-clock.js';

interface IntakeCommandOptions extends IntakeOptions {
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk intake session.jsonl
      shows the intake of a saved session
  pinwalk intake session.jsonl --symptom "lamp lit, screen black" --data-matters yes
  pinwalk intake session.jsonl --photo before.jpg after.jpg
  pinwalk intake session.jsonl --observe lamp=yes picture=no
  pinwalk intake session.jsonl --intake intake.json
      { "format": "pinwalk-intake/1", "ticket": "T-17", "symptom": "…", "observed": { "lamp": "yes" } }
Whatever is said again replaces what was noted before; an empty text takes it back.`;

export const intakeCommand = (): Command =>
  intakeOptions(
    new Command('intake')
      .description('show the intake of a saved session, add to it or correct it')
      .argument('<session>', 'a saved session'),
  )
    .option('--intake <file>', 'a file that says all this')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = async (session: string, { json, ...options }: IntakeCommandOptions): Promise<void> => {
  const { profile, job } = readJob(session);
  const show = (events: readonly WalkEvent[]): void => {
    for (const event of events) {
      if (!isJobEvent(event)) continue;
      if (json) sayObject(event);
      else describeJob(event, profile, english.job).forEach(sayLine);
    }
  };
  const given = intakeGiven(options, profile);
  if (isNothing(given)) show(jobEvents(job));
  else show(await addTo(session, given));
};

const readJob = (session: string): { readonly profile: Profile; readonly job: Job } => {
  let profile: Profile | null = null;
  let job = emptyJob;
  for (const event of readSession(session)) {
    if (event.type === 'session-opened') profile ??= event.profile.content;
    job = foldJob(job, event);
  }
  if (profile !== null) return { profile, job };
  return refuseNoSession(session);
};

const addTo = async (session: string, given: Given): Promise<readonly Numbered[]> => {
  const work = openLaterWork(session, { ...createMonotonicClock(), wall: wallClock() });
  const { opened, before, notices } = work;
  try {
    for (const notice of notices) complain(notice);
    const job = before.reduce(foldJob, emptyJob);
    return work.append(givenEvents(given, opened.profile.content, job, work.now()));
  } finally {
    await work.close();
  }
};

const isNothing = ({ fields, photos, observed }: Given): boolean =>
  [fields, photos, observed].every((part) => Object.keys(part).length === 0);
