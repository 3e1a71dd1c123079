// Damage and malice done to a sound text: bytes lost, doubled and put in, and for JSON also values, keys and
// structure. Drawn by fast-check, so that a failure shrinks to little.
import fc from 'fast-check';

/** What trips readers up: syntax, prototype names, numbers at the edges, controls, direction marks, length. */
const tokens: readonly string[] = [
  ...['{', '}', '[', ']', '"', ',', ':', '\\', '\\u0000', '\\ud800', '//', '\n', '\r\n', ' '],
  ...['null', 'true', '-', '0', '-1', '1e999', '1e-400', '9.9E37', '007', 'NaN', 'OL', '+'],
  ...['"__proto__":{"x":1},', '"constructor":0,', '"toString"', 'prototype', '"":1,'],
  ...['\u001b[2J', '\u009b', '\u202e', '\u200b', '\ufeff', '\u2028', '\u0000', '\ud83d', 'é', 'Ω'],
  ...['[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[', 'x'.repeat(5000), '9'.repeat(400)],
];

interface Cut {
  readonly at: number;
  readonly drop: number;
  readonly put: string;
}

const cut: fc.Arbitrary<Cut> = fc.record({
  at: fc.nat(1_000_000),
  drop: fc.oneof(fc.constant(0), fc.constant(1), fc.nat(40)),
  put: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom(...tokens) },
    { weight: 1, arbitrary: fc.constant('') },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) },
  ),
});

const withCuts = (text: string, cuts: readonly Cut[]): string =>
  cuts.reduce((before, { at, drop, put }) => {
    const place = at % (before.length + 1);
    return before.slice(0, place) + put + before.slice(place + drop);
  }, text);

/** One of the texts, with one to four wounds. */
export const damaged = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(fc.constantFrom(...texts), fc.array(cut, { minLength: 1, maxLength: 4 }))
    .map(([text, cuts]) => withCuts(text, cuts));

const values: readonly unknown[] = [
  ...[null, true, 0, -1, 1e308, 0.5, '', 'x', '1', [], {}, [[]], { x: 1 }],
  ...['\u001b[31m', '\u202e', 'x'.repeat(3000), '(', '(a+)+$', '(?P<value>.*)*', '[', '\\'],
  ...['2026-13-01', 'GND', 'resistance', 'overload', 1e-9, 4096, 2 ** 53],
];
const keys = ['constructor', 'toString', 'hasOwnProperty', 'id', '\u001b', '', 'lines', 'expect'];

interface Change {
  readonly at: number;
  readonly how: 'value' | 'drop' | 'add' | 'rename' | 'copy';
  readonly pick: number;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(1_000_000),
  how: fc.constantFrom('value', 'value', 'drop', 'add', 'rename', 'copy'),
  pick: fc.nat(1000),
});

type Holder = Record<string | number, unknown>;

/** Every place in a document, as the object or list it is in and its key. */
const placesIn = (root: unknown, places: [Holder, string | number][] = []): typeof places => {
  if (typeof root !== 'object' || root === null) return places;
  for (const key of Object.keys(root)) {
    places.push([root as Holder, Array.isArray(root) ? Number(key) : key]);
    placesIn((root as Holder)[key], places);
  }
  return places;
};

const apply = (root: unknown, { at, how, pick }: Change): void => {
  const places = placesIn(root);
  const [holder, key] = places[at % Math.max(1, places.length)] ?? [];
  if (holder === undefined || key === undefined) return;
  switch (how) {
    case 'value':
      holder[key] = structuredClone(values[pick % values.length]);
      return;
    case 'drop':
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
      return;
    case 'add':
      if (Array.isArray(holder)) holder.push(structuredClone(values[pick % values.length]));
      else holder[keys[pick % keys.length] ?? ''] = structuredClone(values[pick % values.length]);
      return;
    case 'rename':
      if (Array.isArray(holder)) return;
      holder[keys[pick % keys.length] ?? ''] = holder[key];
      delete holder[key];
      return;
    case 'copy':
      holder[key] =
        places[pick % places.length]?.[0] === holder
          ? null
          : structuredClone(places[pick % places.length]?.[0]);
  }
};

/** One of the JSON documents with one to three changes of content that leave it JSON. */
export const changed = (documents: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(fc.constantFrom(...documents), fc.array(change, { minLength: 1, maxLength: 3 }))
    .map(([text, changes]) => {
      const root: unknown = JSON.parse(text);
      for (const one of changes) apply(root, one);
      return JSON.stringify(root);
    });
