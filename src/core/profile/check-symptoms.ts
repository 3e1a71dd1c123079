// Symptoms lead to groups and to observations that are asked for, and every observation tells something.
import { type Problem, quoted } from '../problems.js';
import type { Profile } from './profile-format.js';
import { has, unknownName } from './unknown-name.js';

export const checkSymptoms = (profile: Profile): Problem[] => {
  const { symptoms = [], groups, lines } = profile;
  const known = new Set(Object.keys(groups ?? {}));
  for (const { group } of Object.values(lines)) if (group !== undefined) known.add(group);
  const seen = new Set<string>();
  return symptoms.flatMap(({ id, walkFirst, leaveAlone = [] }, index) => {
    const problems: Problem[] = [];
    const path = ['symptoms', index];
    if (seen.has(id)) {
      problems.push({
        path: [...path, 'id'],
        what: `the symptom ${quoted(id)} is here a second time`,
        fix: 'give each symptom its own id',
      });
    }
    seen.add(id);
    const lists = { walkFirst, leaveAlone };
    for (const [key, named] of Object.entries(lists)) {
      named.forEach((group, at) => {
        if (known.has(group)) return;
        problems.push(unknownName([...path, key, at], 'group', group, [...known]));
      });
    }
    problems.push(...checkShows(profile, index));
    leaveAlone.forEach((group, at) => {
      if (!walkFirst.includes(group)) return;
      problems.push({
        path: [...path, 'leaveAlone', at],
        what: `the group ${quoted(group)} is to be walked first and left alone`,
        fix: 'keep it in one of the two lists',
      });
    });
    return problems;
  });
};

/** The observations a symptom tells of are asked for. */
const checkShows = ({ symptoms = [], observations = {} }: Profile, index: number): Problem[] => {
  const { id, shows } = symptoms[index] ?? {};
  const path = ['symptoms', index];
  if (shows === undefined) {
    if (Object.keys(observations).length === 0) return [];
    return [
      {
        level: 'warning',
        path,
        what: `no observation speaks for or against the symptom ${quoted(id ?? '')}`,
        fix: 'say in "shows" how often each observation is answered with yes',
      },
    ];
  }
  return Object.keys(shows)
    .filter((name) => !has(observations, name))
    .map((name) =>
      unknownName([...path, 'shows', name], 'observation', name, Object.keys(observations)),
    );
};

/** Observations that nothing follows from are asked in vain. */
export const checkObservations = ({ symptoms = [], observations = {} }: Profile): Problem[] =>
  Object.keys(observations)
    .filter((name) => !symptoms.some(({ shows }) => has(shows, name)))
    .map((name) => ({
      level: 'warning',
      path: ['observations', name],
      what: `no symptom says how often ${quoted(name)} is answered with yes`,
      fix: 'add it to "shows" of the symptoms it tells apart, or remove it',
    }));
