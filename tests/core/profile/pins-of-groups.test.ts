import { describe, expect, it } from 'vitest';
import { pinsOfGroups } from '../../../src/core/profile/pins-of-groups.js';
import { loadProfile } from '../../../src/store/load-definitions.js';

const { content: demo } = loadProfile('demo');

describe('a walk kept to some groups', () => {
  it('takes their pins with a ground at each end', () => {
    expect(pinsOfGroups(demo, ['picture-clock'])).toEqual(['10', '11', '12', '13']);
  });

  it('follows the walking order, whatever order the groups are named in', () => {
    expect(pinsOfGroups(demo, ['bus', 'picture-clock'])).toEqual([
      ...['10', '11', '12', '13', '31', '32'],
    ]);
  });

  it('never has two grounds in a row, which read alike', () => {
    const lineOf = new Map(demo.connector.pins.map(({ pin, line }) => [pin, line]));
    const groups = Object.keys(demo.groups ?? {}).filter((group) => group !== 'ground');
    for (const group of groups) {
      const kinds = pinsOfGroups(demo, [group]).map(
        (pin) => demo.lines[lineOf.get(pin) ?? '']?.kind,
      );
      expect(kinds.join(' '), group).not.toContain('ground ground');
    }
  });

  it('answers a mistyped group with the right one', () => {
    expect(() => pinsOfGroups(demo, ['bsu'])).toThrow(/did you mean "bus"\?/);
    expect(() => pinsOfGroups(demo, ['weather'])).toThrow(/there are .*lamp/);
  });
});
