// Pins lead to lines and lines to pins; there is ground enough to touch, and rows are whole or none.
import { type Problem, quoted } from '../problems.js';
import type { Profile } from './profile-format.js';
import { has, unknownName } from './unknown-name.js';

export const checkPins = ({ connector, lines }: Profile): Problem[] => {
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
