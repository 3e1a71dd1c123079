// Parts lead to lines whose chains pass them, and areas to parts.
import { type Problem, quoted } from '../problems.js';
import { placeOfPart } from './place-of-part.js';
import type { ChainStop, Profile } from './profile-format.js';
import { has, unknownName } from './unknown-name.js';

export const checkParts = ({ parts = {}, lines }: Profile): Problem[] =>
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

const passes = (stop: ChainStop, part: string): boolean =>
  'chip' in stop ? stop.chip === part : placeOfPart(stop)?.part === part;

export const checkAreas = ({ areas = {}, parts = {} }: Profile): Problem[] =>
  Object.entries(areas).flatMap(([area, { parts: named }]) =>
    named.flatMap((part, index) =>
      has(parts, part)
        ? []
        : [unknownName(['areas', area, 'parts', index], 'part', part, Object.keys(parts))],
    ),
  );
