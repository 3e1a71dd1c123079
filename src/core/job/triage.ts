// Triage: what was seen of the device from outside weighs the profile's symptoms, and so the groups to walk first
// and those to leave alone. A table and Bayes' rule, each observation for itself: every step can be said in words.
import type { Profile, Symptom } from '../profile/profile-format.js';
import type { Proposal } from './job.js';
import type { Answer } from './job-events.js';

export type Answers = Readonly<Record<string, Answer>>;
export type Triage = Omit<Proposal, 'type' | 't'>;

/** Share of boards that have something the profile's symptoms do not name. Common practice, no source. */
const otherShare = 0.1;
/** An observation the table says nothing of, and any under a symptom that is not named, goes either way. */
const untold = 0.5;
/** A group is proposed where it is more likely than not to be in question, or to be sound. */
const likelyEnough = 0.5;
/** How much likelier an answer must be under the leading symptom, or less likely, to be worth a word. */
const tellingFactor = 1.5;
/** Under this many bits no further look is worth asking for. */
const leastGain = 0.15;

interface Case {
  readonly symptom: Symptom | null;
  readonly weight: number;
}

/**
 * Null where the profile names no symptoms.
 * @param answers by observation; what the profile does not know, and `unknown`, weighs nothing.
 */
export const triage = (profile: Profile, answers: Answers): Triage | null => {
  const symptoms = profile.symptoms ?? [];
  if (symptoms.length === 0) return null;
  const asked = Object.keys(profile.observations ?? {});
  const told = asked.flatMap((observation) => {
    const answer = Object.hasOwn(answers, observation) ? answers[observation] : undefined;
    return answer === 'yes' || answer === 'no' ? [{ observation, answer }] : [];
  });
  const cases = told.reduce<readonly Case[]>(
    (all, { observation, answer }) => weighBy(all, observation, answer),
    casesOf(symptoms),
  );
  const ranked = cases
    .flatMap(({ symptom, weight }) => (symptom === null ? [] : [{ symptom, weight }]))
    .sort((a, b) => b.weight - a.weight);
  const other = cases.find(({ symptom }) => symptom === null)?.weight ?? 0;
  const first = ranked[0] as (typeof ranked)[number];
  const untouched = asked.filter((name) => !told.some(({ observation }) => observation === name));
  return {
    symptoms: ranked.map(({ symptom: { id, says }, weight }) => ({
      id,
      says,
      probability: weight,
    })),
    other,
    // Before anything was seen, what comes in most is no reason to leave a line alone.
    ...groupsOf(told.length === 0 ? [] : ranked),
    because:
      first.weight > likelyEnough
        ? told.flatMap(({ observation, answer }) => {
            const factor = factorFor(first.symptom, cases, observation, answer);
            const isTelling = factor >= tellingFactor || factor <= 1 / tellingFactor;
            return isTelling ? [{ observation, answer, factor }] : [];
          })
        : [],
    next: mostTelling(named(cases), untouched),
  };
};

const casesOf = (symptoms: readonly Symptom[]): readonly Case[] => {
  const all = symptoms.reduce((sum, { weight = 1 }) => sum + weight, 0);
  return [
    ...symptoms.map((symptom) => ({
      symptom,
      weight: ((symptom.weight ?? 1) / all) * (1 - otherShare),
    })),
    { symptom: null, weight: otherShare },
  ];
};

const chanceOf = (symptom: Symptom | null, observation: string, answer: 'yes' | 'no'): number => {
  const { shows } = symptom ?? {};
  const yes = shows && Object.hasOwn(shows, observation) ? (shows[observation] ?? untold) : untold;
  return answer === 'yes' ? yes : 1 - yes;
};

const weighBy = (
  cases: readonly Case[],
  observation: string,
  answer: 'yes' | 'no',
): readonly Case[] => {
  const weighed = cases.map(({ symptom, weight }) => ({
    symptom,
    weight: weight * chanceOf(symptom, observation, answer),
  }));
  const sum = weighed.reduce((all, { weight }) => all + weight, 0);
  return weighed.map(({ symptom, weight }) => ({ symptom, weight: weight / sum }));
};

/** In the order in which the likeliest symptoms name them. */
const groupsOf = (
  ranked: readonly { readonly symptom: Symptom; readonly weight: number }[],
): Pick<Triage, 'walkFirst' | 'leaveAlone'> => {
  const first = new Map<string, number>();
  const alone = new Map<string, number>();
  const add = (to: Map<string, number>, group: string, weight: number): void =>
    void to.set(group, Math.min(1, (to.get(group) ?? 0) + weight));
  for (const { symptom, weight } of ranked) {
    for (const group of symptom.walkFirst) add(first, group, weight);
    for (const group of symptom.leaveAlone ?? []) add(alone, group, weight);
  }
  const likely = (of: Map<string, number>): Triage['walkFirst'] =>
    [...of]
      .filter(([, probability]) => probability > likelyEnough)
      .map(([group, probability]) => ({ group, probability }));
  return { walkFirst: likely(first), leaveAlone: likely(alone) };
};

/** The likelihood ratio of one answer, against everything else as the other answers weigh it. */
const factorFor = (
  symptom: Symptom,
  cases: readonly Case[],
  observation: string,
  answer: 'yes' | 'no',
): number => {
  const rest = cases.filter((one) => one.symptom !== symptom);
  const withIt = rest.reduce((sum, { weight }) => sum + weight, 0);
  // Without this answer, or the rest would be judged by what it is to be held against.
  const without = rest.reduce(
    (sum, one) => sum + one.weight / chanceOf(one.symptom, observation, answer),
    0,
  );
  return chanceOf(symptom, observation, answer) / (withIt / without);
};

/** The profile's own symptoms alone: what has no table cannot be told apart by one. */
const named = (cases: readonly Case[]): readonly Case[] => {
  const own = cases.filter(({ symptom }) => symptom !== null);
  const sum = own.reduce((all, { weight }) => all + weight, 0);
  return own.map(({ symptom, weight }) => ({ symptom, weight: weight / sum }));
};

/** The observation whose answer is expected to take away most doubt (mutual information, bits). */
const mostTelling = (cases: readonly Case[], names: readonly string[]): Triage['next'] => {
  let best: Triage['next'] = null;
  for (const observation of names) {
    const gain = gainOf(cases, observation);
    if (gain >= leastGain && gain > (best?.gain ?? 0)) best = { observation, gain };
  }
  return best;
};

const gainOf = (cases: readonly Case[], observation: string): number => {
  const before = entropy(cases);
  const left = (['yes', 'no'] as const).reduce((sum, answer) => {
    const chance = cases.reduce(
      (all, { symptom, weight }) => all + weight * chanceOf(symptom, observation, answer),
      0,
    );
    return chance > 0 ? sum + chance * entropy(weighBy(cases, observation, answer)) : sum;
  }, 0);
  return Math.max(0, before - left);
};

const entropy = (cases: readonly Case[]): number =>
  cases.reduce((sum, { weight }) => (weight > 0 ? sum - weight * Math.log2(weight) : sum), 0);
