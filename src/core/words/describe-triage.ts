// Triage in words: what is likeliest and why, which groups to walk first, which to leave alone, what to look at next.
import { cleanText } from '../clean-text.js';
import type { Triage } from '../job/triage.js';
import type { Profile } from '../profile/profile-format.js';
import type { JobWords } from './job-words.js';

const longest = 300;
const clean = (text: string): string => cleanText(text, longest);
const percent = (share: number): number => Math.min(99, Math.round(100 * share));

/** Lines; the first says the most. */
export const describeTriage = (
  proposed: Triage | null,
  profile: Profile,
  { triage: words }: JobWords,
): readonly string[] => {
  const [first] = proposed?.symptoms ?? [];
  if (proposed === null || first === undefined) return [words.nothingNamed];
  const { walkFirst, leaveAlone, because, next, other } = proposed;
  const isClear = first.probability > 0.5;
  const why = profile.symptoms?.find(({ id }) => id === first.id)?.why;
  const asks = (observation: string): string => askedAs(profile, observation);
  return [
    ...(isClear ? [] : [words.unclear]),
    words.likeliest(clean(first.says), percent(first.probability)),
    ...(isClear && why !== undefined ? [words.why(clean(why))] : []),
    ...because.map(({ observation, answer, factor }) =>
      words.factor(asks(observation), answer, factor),
    ),
    ...(other > 0.2 ? [words.other(percent(other))] : []),
    ...(walkFirst.length > 0
      ? [words.walkFirst(groupTitles(profile, walkFirst))]
      : isClear
        ? [words.notHere]
        : []),
    ...(leaveAlone.length > 0 ? [words.leaveAlone(groupTitles(profile, leaveAlone))] : []),
    ...(next === null ? [] : [words.next(asks(next.observation))]),
  ];
};

export const askedAs = ({ observations = {} }: Profile, observation: string): string =>
  clean(
    (Object.hasOwn(observations, observation) && observations[observation]?.asks) || observation,
  );

const groupTitles = (
  { groups = {} }: Profile,
  named: readonly { readonly group: string }[],
): string =>
  named
    .map(({ group }) => clean((Object.hasOwn(groups, group) && groups[group]?.title) || group))
    .join(', ');
