// `share fetch`: the shop's profiles, drivers and drills, to be named by their id from then on.
import { Command } from 'commander';
import { cleanText } from '../../core/clean-text.js';
import { formatProblem } from '../../core/problems.js';
import { english } from '../../core/words/english.js';
import { type Brought, fetchLibrary, IndexError } from '../../share/fetch-library.js';
import { ShareError } from '../../share/share-error.js';
import { libraryFolder } from '../../store/load-definitions.js';
import { type Say, type SayOptions, sayer } from '../say.js';
import { exitCodes, UserError } from '../user-error.js';
import { serverFor } from './address.js';
import { checkEntry } from './check-entry.js';

interface FetchOptions extends SayOptions {
  readonly from?: string;
}

const examples = `
Examples:
  pinwalk share fetch
  pinwalk share fetch --from https://shop.example/library/
  pinwalk walk --profile ID
      a profile of the library, once it was fetched`;

const words = english.share;

export const fetchCommand = (): Command =>
  new Command('fetch')
    .description("fetch the shop's profiles, drivers and drills")
    .option('--from <url>', "the library's address (default: from the configuration)")
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = async (options: FetchOptions): Promise<void> => {
  const say = sayer(options);
  const { address, token } = serverFor('library', options.from);
  const folder = libraryFolder();
  const count = { fetched: 0, current: 0, withdrawn: 0, refused: 0, failed: 0 };
  try {
    for await (const brought of fetchLibrary({ address, folder, token, check: checkEntry })) {
      count[brought.outcome] += 1;
      tell(brought, say);
    }
  } catch (error) {
    throw asUserError(error);
  }
  const { fetched, current, withdrawn, refused, failed } = count;
  say(words.fetched(fetched, current, withdrawn, refused + failed), {
    type: 'library-fetched',
    ...count,
  });
  if (failed > 0) process.exitCode = exitCodes.noLink;
  if (refused > 0) process.exitCode = exitCodes.badFile;
};

const tell = (brought: Brought, say: Say): void => {
  const { kind, id, version } = brought.entry;
  const name = `${words.kinds[kind]} ${id}`;
  const object = { type: 'entry-brought', kind, id, version, outcome: brought.outcome };
  switch (brought.outcome) {
    case 'refused':
      for (const line of brought.lines)
        say(words.notBrought(name, line), { ...object, says: line });
      return;
    case 'failed': {
      const says = words.fault(brought.found);
      say(words.notBrought(name, says), { ...object, says });
      return;
    }
    default:
      say(words.brought(brought.outcome, name, cleanText(version, 40)), object);
  }
};

const asUserError = (error: unknown): unknown => {
  if (error instanceof ShareError) {
    return new UserError([words.fault(error.found), words.offlineStill], exitCodes.noLink);
  }
  if (error instanceof IndexError) {
    const lines = error.problems.slice(0, 20).map((problem) => formatProblem(error.at, problem));
    return new UserError([...lines, words.indexRefused], exitCodes.badFile);
  }
  return error;
};
