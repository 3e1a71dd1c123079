// A line leads to its mate and back, to its group, and along its chain to parts that list it.
import { type Problem, quoted } from '../problems.js';
import { placeOfPart } from './place-of-part.js';
import type { Profile } from './profile-format.js';
import { has, unknownName } from './unknown-name.js';

export const checkLine = (profile: Profile, name: string): Problem[] => {
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
    const place = placeOfPart(stop);
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
