import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../../src/core/definition/read-definition.js';
import { libraryKind } from '../../../src/core/share/library-format.js';

const hash = 'a'.repeat(64);
const file = (name: string, bytes = 10): object => ({ name, sha256: hash, bytes });
const entry = (id: string, files: object[], kind = 'profile'): object => ({
  ...{ kind, id, version: '1', title: 'T' },
  files,
});
const read = (...entries: object[]) =>
  readDefinition(
    libraryKind,
    JSON.stringify({ format: 'pinwalk-library/1', title: 'Shop', entries }, null, 1),
  );

describe('the index of a library', () => {
  it('should be read with a drill and its session', () => {
    const { content, problems } = read(
      entry('j1', [file('j1.json')]),
      entry('first', [file('first.json'), file('first-walk.jsonl')], 'drill'),
    );
    expect(problems).toEqual([]);
    expect(content?.entries.map(({ id }) => id)).toEqual(['j1', 'first']);
  });

  it.each([
    ['../../.bashrc', '../../.bashrc.json'],
    ['a/b', 'a/b.json'],
    ['..', '...json'],
    ['.hidden', '.hidden.json'],
    ['a\\b', 'a\\b.json'],
    ['a\u0000b', 'a\u0000b.json'],
    ['C:x', 'C:x.json'],
  ])('should refuse the id %j and its file, with the line', (id, name) => {
    const { content, problems } = read(entry(id, [file(name)]));
    expect(content).toBeUndefined();
    expect(problems.length).toBeGreaterThanOrEqual(2);
    for (const { line } of problems) expect(line).toBeGreaterThan(4);
  });

  it.each([
    [[entry('a', [file('b.json')])], 'these are not the files of a profile'],
    [[entry('a', [file('a.json'), file('a.jsonl')])], 'these are not the files of a profile'],
    [[entry('a', [file('a.json')], 'drill')], 'these are not the files of a drill'],
    [[entry('a', [file('a.json', 3e6)])], 'larger than any profile'],
    [[entry('a', [file('a.json')]), entry('A', [file('A.json')])], 'listed already'],
    [[entry('a', [file('a.json')], 'program')], 'not known here'],
  ])('should refuse %j', (entries, says) => {
    const { content, problems } = read(...entries);
    expect(content).toBeUndefined();
    expect(problems.map(({ what }) => what).join()).toContain(says);
  });

  it('should refuse a key that would reach into every object', () => {
    const text = `{"format":"pinwalk-library/1","title":"T","entries":[],"__proto__":{"a":1}}`;
    expect(readDefinition(libraryKind, text).problems[0]?.what).toContain('"__proto__" cannot');
  });
});
