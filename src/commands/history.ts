// `history`: what failed after which symptom, over a folder of sessions; and priors of suspects from it.
import { basename } from 'node:path';
import { Command } from 'commander';
import { cleanText } from '../core/clean-text.js';
import { shopPriors } from '../core/history/shop-priors.js';
import { type History, tallyCases } from '../core/history/tally-cases.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { type Definition, loadProfile } from '../store/load-definitions.js';
import { readCases } from '../store/read-cases.js';
import { savedSessions } from '../store/session-paths.js';
import { writeOut } from '../store/write-out.js';
import { profileText, refuseOut } from './profile-file.js';
import { complain, say, sayLine, sayObject, sayTable } from './say.js';
import { textTable } from './text-table.js';
import { exitCodes, UserError } from './user-error.js';

interface HistoryOptions {
  readonly profile?: string;
  readonly out?: string;
  readonly force?: boolean;
  readonly simulated?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk history
      the sessions in the data folder
  pinwalk history /srv/shop/sessions --json
  pinwalk history --profile my-connector --out my-connector-2.json
      a profile whose suspects are weighed by what failed in this shop

A place counts as confirmed where the job was closed with it as the cause, and as
found where pressing it changed the reading. What the ranking alone suspects is
listed but never counted. Simulated sessions are left out. Learn priors from the
profile as it was: one that has learned them would count the same boards twice.`;

const words = english.history;

export const historyCommand = (): Command =>
  new Command('history')
    .description('what failed after which symptom, over a folder of sessions')
    .argument('[folder]', 'a folder of sessions (default: in the data folder)')
    .option('--profile <id or file>', 'this connector alone, with priors for its suspects')
    .option('--out <file>', 'with --profile: write the profile with these priors here')
    .option('--force', 'replace a file that is there already')
    .option('--simulated', 'count sessions of the virtual bench too')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = (folder: string | undefined, options: HistoryOptions): void => {
  const { out, json } = options;
  if (out !== undefined && options.profile === undefined) {
    throw new UserError(english.refusals.outWithoutProfile, exitCodes.usage);
  }
  const profile = options.profile === undefined ? null : loadProfile(options.profile);
  if (profile !== null && out !== undefined) {
    refuseOut(out, [profile.path], options.force ?? false);
  }
  const { history, ...counts } = read(folder ?? savedSessions(), profile, options);
  if (json) {
    for (const row of history.rows) sayObject({ type: 'failures-counted', ...row });
    for (const board of history.boards) sayObject({ type: 'boards-counted', ...board });
    sayObject({ type: 'history-read', ...counts });
  } else {
    if (history.rows.length === 0) sayLine(words.nothing);
    else sayTable(tableOf(history));
    for (const { profile: id, boards, explained } of history.boards) {
      sayLine(words.boards(cleanText(id, 40), boards, explained));
    }
    sayLine(words.summary(counts.sessions, counts.skipped, counts.simulated));
  }
  if (profile !== null) tellPriors(profile, history, options);
};

interface Read {
  readonly history: History;
  readonly sessions: number;
  readonly skipped: number;
  readonly simulated: number;
}

const read = (
  folder: string | null,
  profile: Definition<Profile> | null,
  { simulated: withSimulated }: HistoryOptions,
): Read => {
  const tally = tallyCases();
  let [sessions, skipped, simulated] = [0, 0, 0];
  for (const found of folder === null ? [] : readCases(folder)) {
    if ('problem' in found) {
      skipped += 1;
      const [problem] = found.problem.problems;
      const line = problem?.line === undefined ? '' : `line ${problem.line}: `;
      const why = `${line}${problem?.what}; ${problem?.fix}`;
      complain(words.skipped(cleanText(found.path, 300), why));
    } else if (profile !== null && found.case.profile !== profile.id) {
      // Another connector's.
    } else if (found.case.simulated && !withSimulated) {
      simulated += 1;
    } else {
      sessions += 1;
      tally.add(found.case);
    }
  }
  return { history: tally.history(), sessions, skipped, simulated };
};

const tableOf = ({ rows }: History): string =>
  textTable([
    words.head,
    ...rows.map(({ profile, symptom, place, counts: { confirmed, found, suspected } }) => [
      cleanText(profile, 40),
      symptom === null ? words.noSymptom : cleanText(symptom, 40),
      cleanText(place, 40),
      ...[confirmed, found, suspected].map(String),
    ]),
  ]);

const tellPriors = (
  { id, content }: Definition<Profile>,
  history: History,
  { out, force, json }: HistoryOptions,
): void => {
  const learned = shopPriors(content, history);
  if (learned === null) {
    if (out === undefined) return;
    throw new UserError(words.noPriors(id), exitCodes.badFile);
  }
  for (const { place, faults, boards, before, now } of learned.priors) {
    const told = words.prior(cleanText(place, 40), faults, boards, before, now);
    say(json, told, { type: 'prior-learned', place, faults, boards, before, now });
  }
  if (learned.unplaced.length > 0 && !json) {
    sayLine(words.unplaced(learned.unplaced.map((place) => cleanText(place, 40)).join(', ')));
  }
  if (out === undefined) {
    if (!json) sayLine(words.notWritten);
    return;
  }
  const renamed = { ...learned.profile, id: basename(out, '.json') };
  writeOut(out, profileText(renamed, out).text, { force: force ?? false });
  const said = words.written(cleanText(renamed.id, 40), cleanText(out, 300));
  say(json, said, { type: 'profile-written', id: renamed.id, file: out });
};
