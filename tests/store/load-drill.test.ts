import { hash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { DrillResult } from '../../src/core/drill/drill-result.js';
import { earlierResults, keepResult } from '../../src/store/drill-results.js';
import { listDrills, loadDrill } from '../../src/store/load-drill.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const bytes = '{"seq":0}\n';
const drill = (id: string, more: object = {}): string =>
  JSON.stringify({
    format: 'pinwalk-drill/1',
    id,
    title: 'Demo',
    level: 1,
    briefing: 'Call them.',
    session: 'demo.jsonl',
    sha256: hash('sha256', bytes, 'hex'),
    asks: ['verdict'],
    pins: 'all',
    provenance: { by: 'demo', date: '2026-01-31', how: 'invented' },
    ...more,
  });

const made = (files: Readonly<Record<string, string>>): string => {
  const folder = temporaryFolder();
  for (const part of ['drills', 'sessions']) mkdirSync(join(folder, part));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return join(folder, 'drills');
};

describe('a drill file', () => {
  it.each(['drills', 'sessions'])('should find its session in %s', (where) => {
    const folder = made({ 'drills/one.json': drill('one'), [`${where}/demo.jsonl`]: bytes });
    expect(loadDrill('one', [folder]).sessionPath).toMatch(/demo\.jsonl$/u);
  });

  it('should refuse a session that is not there, or another one', () => {
    const without = made({ 'drills/one.json': drill('one') });
    expect(() => loadDrill('one', [without])).toThrow('there is no session "demo.jsonl"');
    const other = made({ 'drills/one.json': drill('one'), 'drills/demo.jsonl': `${bytes}more` });
    expect(() => loadDrill('one', [other])).toThrow('is not the session this drill was made for');
  });

  it.each(['../demo.jsonl', '/etc/passwd.jsonl', 'a/b.jsonl', '..jsonl'])(
    'should refuse a session outside its folder: %s',
    (session) => {
      const folder = made({ 'drills/one.json': drill('one', { session }) });
      expect(() => loadDrill('one', [folder])).toThrow('session');
    },
  );

  it('should name the slip with its line', () => {
    const folder = made({ 'drills/one.json': drill('one', { asks: ['verdicts'] }) });
    expect(() => loadDrill('one', [folder])).toThrow(/one\.json:1: /u);
  });

  it('should be listed easy ones first, broken ones left out', () => {
    const folder = made({
      'drills/b.json': drill('b', { level: 2 }),
      'drills/a.json': drill('a', { level: 3 }),
      'drills/c.json': drill('c'),
      'drills/d.json': '{',
    });
    expect(listDrills([folder]).map(({ id }) => id)).toEqual(['c', 'b', 'a']);
  });
});

describe('results of drills', () => {
  it('should be kept, and found again by drill', () => {
    const path = join(temporaryFolder(), 'new', 'results.jsonl');
    const result = (name: string, points: number): DrillResult => ({
      format: 'pinwalk-drill-result/1',
      wallTime: '2026-01-31T10:00:00Z',
      drill: name,
      points,
      of: 3,
      answers: [],
    });
    expect(earlierResults('one', path)).toEqual([]);
    keepResult(result('one', 1), path);
    keepResult(result('two', 2), path);
    writeFileSync(path, 'torn', { flag: 'a' });
    keepResult(result('one', 3), path);
    expect(earlierResults('one', path).map(({ points }) => points)).toEqual([1, 3]);
  });

  it('should say in one line where they cannot be kept', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    expect(() =>
      keepResult(
        {
          format: 'pinwalk-drill-result/1',
          wallTime: '2026-01-31T10:00:00Z',
          drill: 'one',
          points: 0,
          of: 0,
          answers: [],
        },
        join(folder, 'file', 'results.jsonl'),
      ),
    ).toThrow('the result could not be kept');
  });
});
