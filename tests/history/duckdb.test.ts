// Session files can be asked by an engine of its own, as they lie on the disk: here DuckDB, whose answers must be
// those of `history`. The queries are the ones in DEVELOPERS.md.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DuckDBInstance } from '@duckdb/node-api';
import { beforeAll, describe, expect, it } from 'vitest';
import { tallyCases } from '../../src/core/history/tally-cases.js';
import { readSession } from '../../src/store/journal-reader.js';
import { readCases } from '../../src/store/read-cases.js';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const folder = at('recordings/sessions');

/** The statements of the first SQL block of the document. */
const documented = (): readonly string[] => {
  const [, sql = ''] = /```sql\n(.*?)```/su.exec(readFileSync(at('DEVELOPERS.md'), 'utf8')) ?? [];
  return sql.split(';').filter((statement) => statement.trim() !== '');
};

describe('session files in DuckDB', () => {
  let answers: Record<string, unknown>[][];
  beforeAll(async () => {
    const connection = await (await DuckDBInstance.create(':memory:')).connect();
    answers = [];
    for (const statement of documented()) {
      const reader = await connection.runAndReadAll(statement.replaceAll('SESSIONS', folder));
      answers.push(reader.getRowObjectsJson() as Record<string, unknown>[]);
    }
    connection.closeSync();
  }, 120_000);

  it('should count the verdicts as the sessions themselves do', () => {
    const counted = new Map<string, number>();
    for (const { path } of readCases(folder)) {
      const last = new Map<string, string>();
      for (const event of readSession(path)) {
        if (event.type === 'pin-judged') last.set(event.pin, event.verdict);
      }
      for (const verdict of last.values()) counted.set(verdict, (counted.get(verdict) ?? 0) + 1);
    }
    expect(counted.size).toBeGreaterThan(2);
    const told = answers[1]?.map(({ verdict, pins }) => [verdict, Number(pins)]);
    expect(new Map(told as [string, number][])).toEqual(counted);
  });

  it('should find by pressing what history finds', () => {
    const tally = tallyCases();
    for (const found of readCases(folder)) if ('case' in found) tally.add(found.case);
    const rows = tally.history().rows.filter(({ counts }) => counts.found > 0);
    expect(rows.length).toBeGreaterThan(0);
    expect(answers[2]?.map(({ part, boards }) => [part, Number(boards)])).toEqual(
      rows.map(({ place, counts }) => [place, counts.found]),
    );
  });
});
