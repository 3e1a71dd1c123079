// The guided start: asks for what a walk needs and was not told, one numbered question after another, and ends
// with the command that would have said it all.

import { cleanText } from '../core/clean-text.js';
import type { Driver } from '../core/meter/driver-format.js';
import type { GuideWords } from '../core/words/guide-words.js';
import type { Identification } from '../link/identify.js';
import { LinkNameError, parseLinkName } from '../link/link-name.js';

/** What the guide needs from the world; a test gives its own. */
export interface GuideWorld {
  ask(question: string): Promise<string>;
  say(line: string): void;
  ports(): Promise<readonly string[]>;
  identify(link: string): Promise<Identification>;
  readonly drivers: readonly Pick<Driver, 'id' | 'title'>[];
  readonly profiles: readonly { readonly id: string; readonly title: string }[];
}

export interface Guided {
  readonly link: string;
  readonly driver?: string;
  readonly profile: string;
}

export interface Known {
  readonly link?: string;
  readonly driver?: string;
  readonly profile?: string;
}

export const guide = async (
  known: Known,
  world: GuideWorld,
  words: GuideWords,
): Promise<Guided> => {
  for (const caution of words.cautions) world.say(caution);
  const chosen = known.link ?? (await chooseLink(world, words));
  const { link, driver } = await chooseDriver({ ...known, link: chosen }, world, words);
  const profile = known.profile ?? (await chooseProfile(world, words));
  const guided = { link, profile, ...(driver === undefined ? {} : { driver }) };
  world.say(words.sameAgain(commandFor(guided)));
  return guided;
};

const virtual = 'virtual:demo';

const chooseLink = async (world: GuideWorld, words: GuideWords): Promise<string> => {
  const ports = (await world.ports()).map((path) => `serial:${path}`);
  const answers = [...ports, words.virtualBench, words.typeLink];
  const choice = await choose(words.whichMeter, answers, world, words);
  if (choice < ports.length) return ports[choice] as string;
  return choice === ports.length ? virtual : typeLink(world, words);
};

const typeLink = async (world: GuideWorld, words: GuideWords): Promise<string> => {
  for (;;) {
    const link = (await world.ask(`${words.linkExample}: `)).trim();
    try {
      parseLinkName(link);
      return link;
    } catch (error) {
      if (!(error instanceof LinkNameError)) throw error;
      world.say(error.message);
    }
  }
};

const chooseDriver = async (
  known: Known & { readonly link: string },
  world: GuideWorld,
  words: GuideWords,
): Promise<{ link: string; driver?: string }> => {
  const { link, driver } = known;
  const { kind } = parseLinkName(link);
  if (driver !== undefined) return { link, driver };
  if (kind !== 'serial' && kind !== 'tcp') return { link };
  world.say(words.asking(cleanText(link, 80)));
  const { proposals, notes } = await world.identify(link);
  for (const note of notes) world.say(note);
  if (proposals.length === 0) {
    world.say(words.nothingAnswers);
    const titles = world.drivers.map(({ id, title }) => `${id}: ${title}`);
    const choice = await choose(words.whichDriver, titles, world, words);
    return { link, driver: world.drivers[choice]?.id as string };
  }
  const evidence = proposals.map((proposal) => `${proposal.driver}: ${proposal.evidence}`);
  const choice = await choose(words.whichDriver, evidence, world, words);
  const chosen = proposals[choice] as (typeof proposals)[number];
  return { link: chosen.link, driver: chosen.driver };
};

const chooseProfile = async (world: GuideWorld, words: GuideWords): Promise<string> => {
  const titles = world.profiles.map(({ id, title }) => `${id}: ${title}`);
  const choice = await choose(words.whichProfile, [...titles, words.typeProfile], world, words);
  const chosen = world.profiles[choice];
  return chosen === undefined ? (await world.ask(`${words.profileExample}: `)).trim() : chosen.id;
};

/** Index of the chosen answer; asks until one is chosen. */
const choose = async (
  question: string,
  answers: readonly string[],
  world: GuideWorld,
  words: GuideWords,
): Promise<number> => {
  world.say(question);
  answers.forEach((answer, index) => {
    world.say(`  ${index + 1}  ${answer}`);
  });
  for (;;) {
    const given = (await world.ask(words.choose(answers.length))).trim();
    const choice = /^\d{1,3}$/u.test(given) ? Number(given) : 0;
    if (choice >= 1 && choice <= answers.length) return choice - 1;
    world.say(words.notAChoice(cleanText(given, 20), answers.length));
  }
};

const commandFor = ({ link, driver, profile }: Guided): string =>
  [
    'pinwalk walk --link',
    shellWord(link),
    ...(driver === undefined ? [] : ['--driver', shellWord(driver)]),
    '--profile',
    shellWord(profile),
  ].join(' ');

const shellWord = (text: string): string =>
  /^[\w@%+=:,./-]+$/u.test(text) ? text : `'${cleanText(text, 300).replaceAll("'", "'\\''")}'`;
