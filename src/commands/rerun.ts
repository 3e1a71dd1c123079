// `rerun`: decides a walk anew from what is stored, without a screen.
import { Command } from 'commander';
import type { EventOf, WalkEvent } from '../core/events.js';
import type { Profile } from '../core/profile/profile-format.js';
import { foldStored, openStored } from '../core/walk/fold-stored.js';
import { openLog } from '../core/walk/open-session.js';
import { rejudge } from '../core/walk/rejudge.js';
import { type Retold, rerunSession, retell, toItsEnd } from '../core/walk/rerun.js';
import type { WalkState } from '../core/walk/state.js';
import { english } from '../core/words/english.js';
import { readSession } from '../store/journal-reader.js';
import { type Definition, loadDriver, loadProfile } from '../store/load-definitions.js';
import { readLog } from '../store/read-log.js';
import { storedKind } from '../store/stored-kind.js';
import { type AccuracyOptions, accuracyOptions, askedAccuracy } from './accuracy-option.js';
import { openingOf } from './named-session.js';
import { rerunPress } from './rerun-press.js';
import { createRerunTeller, type RerunTeller } from './rerun-teller.js';
import { exitCodes, UserError } from './user-error.js';

interface RerunOptions extends AccuracyOptions {
  readonly profile?: string;
  readonly driver?: string;
  readonly fromReadings?: boolean;
  readonly press?: string;
  readonly part?: string;
  readonly readings?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk rerun readings.jsonl --profile demo --json
      walks a plain reading log; the first contact belongs to the first pin
  pinwalk rerun session.jsonl --profile my-connector.json
      judges the stored captures by another profile and lists what changes
  pinwalk rerun session.jsonl --from-readings
      captures anew from the stored readings and acts
  pinwalk rerun press.jsonl --profile demo --press LANE1_P --part FL2 --json
      judges a press test from its readings and its press and release cues; without cues it says what the
      line did, and judges by the marks "pressing" and "released"`;

export const rerunCommand = (): Command =>
  accuracyOptions(
    new Command('rerun')
      .description('recompute from a saved session or a plain reading log, without a screen')
      .argument('<file>', 'a session or a reading log')
      .option('--profile <id or file>', 'judge by this profile')
      .option('--driver <id or file>', "take the meter's accuracy from this driver")
      .option('--from-readings', 'with a session: capture anew from the stored inputs')
      .option('--press <line>', 'judge a press test on this line from the readings and cues')
      .option('--part <name>', 'with --press: the part that was pressed')
      .option('--readings', 'tell every reading too')
      .option('--json', 'one JSON object per line on stdout')
      .option('--plain', 'lines of text (the usual form)'),
  )
    .addHelpText('after', examples)
    .action(run);

const run = (file: string, options: RerunOptions): void => {
  const tell = createRerunTeller(options);
  if (options.press !== undefined) {
    const { judged, traced } = rerunPress(file, { ...options, line: options.press });
    if (traced !== null) tell.traced(traced);
    tell.press(judged);
  } else if (storedKind(file) !== 'session') {
    for (const { event, state } of rerunLog(file, options)) tell.told(event, state);
  } else if (options.fromReadings) {
    for (const event of rerunStored(file, options)) tell.event(event);
  } else listDifferences(file, options, tell);
  tell.end();
};

function* rerunLog(file: string, options: RerunOptions): Generator<Retold, void> {
  if (options.profile === undefined) {
    throw new UserError(english.refusals.logNeedsProfile, exitCodes.usage);
  }
  const profile = loadProfile(options.profile);
  const driver = options.driver === undefined ? null : loadDriver(options.driver);
  const { function: measure } = profile.content.measure;
  const accuracy = askedAccuracy(options, driver?.content ?? null, measure);
  const opened = openLog(profile, stamp(driver), accuracy, `log:${file}`);
  yield* retell(opened, toItsEnd(readLog(file)), { readings: options.readings === true });
}

function* rerunStored(file: string, options: RerunOptions): Generator<WalkEvent, void> {
  const events = readSession(file);
  const opened = openingOf(events.next().value, file);
  const profile = options.profile === undefined ? null : loadProfile(options.profile);
  yield* rerunSession(
    profile === null ? opened : { ...opened, profile: embedded(profile) },
    events,
  );
}

const listDifferences = (file: string, options: RerunOptions, tell: RerunTeller): void => {
  const events = readSession(file);
  const opened = openingOf(events.next().value, file);
  let state: WalkState = openStored(opened);
  for (const event of events) state = foldStored(state, event);
  const profile =
    options.profile === undefined ? opened.profile.content : loadProfile(options.profile).content;
  let changed = 0;
  for (const { judged, before } of rejudge(state, profile)) {
    if (judged.verdict === before) continue;
    changed += 1;
    tell.difference(judged, before);
  }
  tell.summary(changed);
};

const stamp = (driver: Definition<{ id: string }> | null): EventOf<'session-opened'>['driver'] =>
  driver === null ? null : { id: driver.content.id, sha256: driver.sha256 };

const embedded = ({
  content,
  sha256,
}: Definition<Profile>): EventOf<'session-opened'>['profile'] => ({
  id: content.id,
  sha256,
  content,
});
