// Every name in a profile leads somewhere, and leads back where it must: pins to lines, lines to mates, groups
// and parts, parts to lines, symptoms to groups.
import { nearestName } from '../nearest-name.js';
import { type JsonPath, type Problem, quoted } from '../problems.js';
import type { ChainStop, Profile } from './profile-format.js';

export const checkReferences = (profile: Profile): readonly Problem[] => [
  ...checkPins(profile),
  ...Object.keys(profile.lines).flatMap((name) => checkLine(profile, name)),
  ...checkParts(profile),
  ...checkAreas(profile),
  ...checkSymptoms(profile),
  ...checkObservations(profile),
];

const has = (named: object | undefined, name: string): boolean =>
  named !== undefined && Object.hasOwn(named, name);

const unknownName = (
  path: JsonPath,
  sort: string,
  name: string,
  known: readonly string[],
): Problem => {
  const near = nearestName(name, known);
  const what = `there is no ${sort} ${quoted(name)}`;
  if (near !== undefined) return { path, what, fix: `did you mean ${quoted(near)}?` };
  const some = known.slice(0, 8).map(quoted).join(', ');
  const more = known.length > 8 ? ', …' : '';
  return { path, what, fix: known.length === 0 ? `define it` : `define it, or use ${some}${more}` };
};

const checkPins = ({ connector, lines }: Profile): Problem[] => {
  const problems: Problem[] = [];
  const seen = new Map<string, number>();
  const used = new Set<string>();
  let grounds = 0;
  let inRows = 0;
  connector.pins.forEach(({ pin, line, row }, index) => {
    const path = ['connector', 'pins', index];
    const before = seen.get(pin);
    if (before === undefined) seen.set(pin, index);
    else {
      problems.push({
        path: [...path, 'pin'],
        what: `pin ${quoted(pin)} is here a second time, first as entry ${before + 1} of the list`,
        fix: 'give each pin its own name',
      });
    }
    if (!has(lines, line)) {
      problems.push(unknownName([...path, 'line'], 'line', line, Object.keys(lines)));
    }
    used.add(line);
    if (has(lines, line) && lines[line]?.kind === 'ground') grounds += 1;
    if (row !== undefined) inRows += 1;
  });
  if (grounds < 2) {
    problems.push({
      level: 'warning',
      path: ['connector', 'pins'],
      what: `${grounds === 0 ? 'no pin is' : 'only one pin is'} on a line of kind "ground"`,
      fix: 'mark the ground lines; the contact check touches two of them',
    });
  }
  if (inRows > 0 && inRows < connector.pins.length) {
    problems.push({
      level: 'warning',
      path: ['connector', 'pins'],
      what: `only ${inRows} of ${connector.pins.length} pins say their row`,
      fix: 'give every pin its "row", or none',
    });
  }
  for (const name of Object.keys(lines)) {
    if (used.has(name)) continue;
    problems.push({
      level: 'warning',
      path: ['lines', name],
      what: `no pin carries the line ${quoted(name)}`,
      fix: 'name it at its pin, or remove it',
    });
  }
  return problems;
};

const checkLine = (profile: Profile, name: string): Problem[] => {
  const { lines, groups } = profile;
  const line = lines[name];
  if (line === undefined) return [];
  const problems: Problem[] = [];
  if (line.mate !== undefined) problems.push(...checkMate(profile, name, line.mate));
  if (line.group !== undefined && groups !== undefined && !has(groups, line.group)) {
    const path = ['lines', name, 'group'];
    problems.push(unknownName(path, 'group', line.group, Object.keys(groups)));
  }
  line.chain?.forEach((stop, index) => {
    const place = partOf(stop);
    if (place === undefined) return;
    const path = ['lines', name, 'chain', index, ...place.path];
    const parts = profile.parts ?? {};
    const part = has(parts, place.part) ? parts[place.part] : undefined;
    if (part === undefined) {
      problems.push(unknownName(path, 'part', place.part, Object.keys(parts)));
    } else if (!part.lines.includes(name)) {
      problems.push({
        path,
        what: `the part ${quoted(place.part)} does not list the line ${quoted(name)}`,
        fix: `add it to the "lines" of that part`,
      });
    }
  });
  return problems;
};

const checkMate = ({ lines }: Profile, name: string, mate: string): Problem[] => {
  const path = ['lines', name, 'mate'];
  if (mate === name)
    return [{ path, what: 'the line is its own mate', fix: 'name the other line' }];
  if (!has(lines, mate)) return [unknownName(path, 'line', mate, Object.keys(lines))];
  const back = lines[mate]?.mate;
  if (back === name) return [];
  const instead = back === undefined ? 'none' : quoted(back);
  return [
    {
      path,
      what: `${quoted(mate)} does not name this line as its mate, but ${instead}`,
      fix: `give ${quoted(mate)} the mate ${quoted(name)}`,
    },
  ];
};

const partOf = (stop: ChainStop): { part: string; path: JsonPath } | undefined => {
  if ('part' in stop) return { part: stop.part, path: ['part'] };
  if ('shunt' in stop) return { part: stop.shunt.part, path: ['shunt', 'part'] };
  return undefined;
};

const passes = (stop: ChainStop, part: string): boolean =>
  'chip' in stop ? stop.chip === part : partOf(stop)?.part === part;

const checkParts = ({ parts = {}, lines }: Profile): Problem[] =>
  Object.entries(parts).flatMap(([name, part]) => {
    const path = ['parts', name, 'lines'];
    if (part.lines.length === 0) {
      return [{ level: 'warning', path, what: 'the part is on no line', fix: 'list its lines' }];
    }
    return part.lines.flatMap((line, index): Problem[] => {
      const here = [...path, index];
      if (!has(lines, line)) return [unknownName(here, 'line', line, Object.keys(lines))];
      if (part.lines.indexOf(line) < index) {
        return [{ path: here, what: 'the line is listed twice', fix: 'remove one' }];
      }
      const chain = lines[line]?.chain;
      if (chain === undefined || chain.some((stop) => passes(stop, name))) return [];
      return [
        {
          level: 'warning',
          path: here,
          what: `the chain of ${quoted(line)} does not pass the part ${quoted(name)}`,
          fix: 'add it there as a part or a shunt, or remove the line here',
        },
      ];
    });
  });

const checkAreas = ({ areas = {}, parts = {} }: Profile): Problem[] =>
  Object.entries(areas).flatMap(([area, { parts: named }]) =>
    named.flatMap((part, index) =>
      has(parts, part)
        ? []
        : [unknownName(['areas', area, 'parts', index], 'part', part, Object.keys(parts))],
    ),
  );

const checkSymptoms = (profile: Profile): Problem[] => {
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
const checkObservations = ({ symptoms = [], observations = {} }: Profile): Problem[] =>
  Object.keys(observations)
    .filter((name) => !symptoms.some(({ shows }) => has(shows, name)))
    .map((name) => ({
      level: 'warning',
      path: ['observations', name],
      what: `no symptom says how often ${quoted(name)} is answered with yes`,
      fix: 'add it to "shows" of the symptoms it tells apart, or remove it',
    }));
