// Profiles written in a line each, for tests: "pin1 [R1=2200] J FL1 j U1" is a joint, a branch that reads 2.2 kΩ,
// a joint, a part, a joint and a chip. Words that begin with a small letter or contain a space are joints.
import { type Profile, profileFormat } from '../../../src/core/profile/profile-format.js';

export interface SmallLine {
  readonly chain?: string;
  readonly kind?: 'signal' | 'supply' | 'ground' | 'unused';
  readonly expect?: number | 'overload';
  readonly pins?: number;
  readonly group?: string;
}

const stopOf = (word: string): object => {
  const branch = /^\[(\w+)(?:=(\d+))?\]$/u.exec(word);
  if (branch !== null) {
    const reads = branch[2] === undefined ? {} : { reads: Number(branch[2]) };
    return { shunt: { part: branch[1], ...reads } };
  }
  if (/^U\d/u.test(word)) return { chip: word };
  return /^[A-Z]+\d+$/u.test(word) ? { part: word } : { joint: word.replaceAll('_', ' ') };
};

const kinds: readonly (readonly [RegExp, string])[] = [
  [/^FL/u, 'filter'],
  [/^C/u, 'capacitor'],
  [/^TV/u, 'diode'],
  [/^U/u, 'chip'],
  [/^R/u, 'resistor'],
];

/** Pins are numbered through the lines in order. Joints are written with `_` for a space. */
export const smallBoard = (
  lines: Readonly<Record<string, SmallLine>>,
  more: Partial<Pick<Profile, 'symptoms' | 'groups'>> = {},
): Profile => {
  const pins: object[] = [];
  const parts = new Map<string, { kind: string; lines: string[] }>();
  const made = Object.entries(lines).map(([name, line]) => {
    const { chain, kind = 'signal', expect = 1000, pins: count = 1, group } = line;
    for (let i = 0; i < count; i += 1) pins.push({ pin: String(pins.length + 1), line: name });
    const stops = chain?.split(' ').map(stopOf);
    for (const stop of stops ?? []) {
      const part = Object.entries(stop).map(([key, value]) =>
        key === 'joint' ? null : key === 'shunt' ? (value as { part: string }).part : String(value),
      )[0];
      if (part === null || part === undefined) continue;
      const known = parts.get(part) ?? {
        kind: kinds.find(([form]) => form.test(part))?.[1] ?? 'other',
        lines: [],
      };
      parts.set(part, known);
      if (!known.lines.includes(name)) known.lines.push(name);
    }
    const resistance = expect === 'overload' ? expect : { nominal: expect, tolerance: 0.1 };
    const expected = kind === 'ground' || kind === 'unused' ? {} : { expect: { resistance } };
    return [
      name,
      {
        kind,
        ...expected,
        ...(group === undefined ? {} : { group }),
        ...(stops === undefined ? {} : { chain: stops }),
      },
    ];
  });
  return profileFormat.parse({
    format: 'pinwalk-profile/1',
    id: 'small',
    title: 'Small',
    provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
    measure: { function: 'resistance', polarity: 'red-walks' },
    connector: { id: 'J1', pins },
    lines: Object.fromEntries(made),
    parts: Object.fromEntries(parts),
    ...more,
  });
};
