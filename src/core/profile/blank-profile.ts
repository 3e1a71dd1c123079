// A profile for a connector nobody has measured yet: its pins in walking order and what little is known of their
// lines. Expected values grow from the first good board.
import type { MeasureFunction, Polarity } from '../reading.js';
import type { Profile, ProfileLine } from './profile-format.js';

export interface BlankWish {
  readonly id: string;
  readonly title: string;
  /** 1 to 2000, named by their numbers. */
  readonly pins: number;
  readonly rows: 1 | 2;
  readonly numbering: 'row-wise' | 'odd-even' | 'around';
  /** Pins by name. */
  readonly grounds: readonly string[];
  readonly supplies: readonly string[];
  readonly unused: readonly string[];
  /** Lines in the order of the pins' numbers; an empty one is named after its pin. */
  readonly names: readonly string[];
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
  readonly by: string;
  /** ISO 8601. */
  readonly date: string;
}

type Kind = ProfileLine['kind'];

/** @throws RangeError in words for a pin that is not there or a line of two kinds. */
export const blankProfile = (wish: BlankWish): Profile => {
  const { pins: count, rows, names, grounds } = wish;
  if (names.length > count) {
    throw new RangeError(`${names.length} names for ${count} pins; give one a pin at most`);
  }
  const kinds = kindsOf(wish);
  const lineOf = (pin: string): string => {
    const given = names[Number(pin) - 1] ?? '';
    if (given !== '') return given;
    return grounds.includes(pin) ? 'GND' : `PIN_${pin}`;
  };
  const pins = walkingOrder(wish).map(({ pin, row }) => ({
    pin,
    line: lineOf(pin),
    ...(rows === 1 ? {} : { row }),
  }));
  return {
    format: 'pinwalk-profile/1',
    id: wish.id,
    title: wish.title,
    provenance: {
      by: wish.by,
      date: wish.date,
      how: 'Pin list only, nothing measured yet',
    },
    measure: { function: wish.function, polarity: wish.polarity },
    connector: {
      id: wish.id,
      ...(rows === 1 ? {} : { numbering: wish.numbering }),
      pins,
    },
    lines: linesOf(pins, kinds),
  };
};

const kindsOf = ({ pins, grounds, supplies, unused }: BlankWish): ReadonlyMap<string, Kind> => {
  const kinds = new Map<string, Kind>();
  const lists = { ground: grounds, supply: supplies, unused } as const;
  for (const kind of ['ground', 'supply', 'unused'] as const) {
    for (const pin of lists[kind]) {
      if (!/^[1-9]\d*$/u.test(pin) || Number(pin) > pins) {
        throw new RangeError(`there is no pin ${pin} of ${pins}`);
      }
      if (kinds.has(pin))
        throw new RangeError(`pin ${pin} is named as ${kinds.get(pin)} and ${kind}`);
      kinds.set(pin, kind);
    }
  }
  return kinds;
};

const walkingOrder = ({
  pins,
  rows,
  numbering,
}: BlankWish): readonly { readonly pin: string; readonly row: number }[] => {
  const all = Array.from({ length: pins }, (_, index) => index + 1);
  const half = Math.ceil(pins / 2);
  const rowOf = (pin: number): number => {
    if (rows === 1) return 1;
    if (numbering === 'odd-even') return pin % 2 === 1 ? 1 : 2;
    return pin <= half ? 1 : 2;
  };
  return all
    .map((pin) => ({ pin: String(pin), row: rowOf(pin) }))
    .sort((a, b) => a.row - b.row || Number(a.pin) - Number(b.pin));
};

const linesOf = (
  pins: readonly { readonly pin: string; readonly line: string }[],
  kinds: ReadonlyMap<string, Kind>,
): Profile['lines'] => {
  const lines = new Map<string, { kind: Kind; pin: string }>();
  for (const { pin, line } of pins) {
    const kind = kinds.get(pin) ?? (line === 'GND' ? 'ground' : 'signal');
    const known = lines.get(line);
    if (known !== undefined && known.kind !== kind) {
      throw new RangeError(
        `line ${line} is ${known.kind} at pin ${known.pin} and ${kind} at pin ${pin}`,
      );
    }
    lines.set(line, known ?? { kind, pin });
  }
  return Object.fromEntries(
    [...lines].map(([name, { kind }]): [string, ProfileLine] => {
      const mate = mateOf(name);
      const isPair = kind === 'signal' && mate !== null && lines.get(mate)?.kind === 'signal';
      return [name, { kind, ...(isPair ? { mate } : {}) }];
    }),
  );
};

/** The trade names the two lines of a pair alike, with P and N or + and - at the end. */
const mateOf = (name: string): string | null => {
  const [, stem, end] = /^(.+[_-]?)([PN+-])$/u.exec(name) ?? [];
  const other = { P: 'N', N: 'P', '+': '-', '-': '+' }[end ?? ''];
  return stem === undefined || other === undefined ? null : `${stem}${other}`;
};

/**
 * Pins from a list with spans.
 * @example pinList('1,4-6') // ['1', '4', '5', '6']
 * @throws RangeError in words.
 */
export const pinList = (text: string): readonly string[] =>
  text
    .split(/[\s,;]+/u)
    .filter((part) => part !== '')
    .flatMap((part) => {
      const [, from, to = from] = /^(\d{1,4})(?:-(\d{1,4}))?$/u.exec(part) ?? [];
      if (from === undefined || Number(to) < Number(from)) {
        throw new RangeError(`"${part}" is no pin and no span of pins, such as 4-6`);
      }
      return Array.from({ length: Number(to) - Number(from) + 1 }, (_, n) =>
        String(Number(from) + n),
      );
    });
