// A key `__proto__` in anything that is read: refused or passed over, and no object is another afterwards.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readResult } from '../../src/core/drill/drill-result.js';
import { decodeLine } from '../../src/core/event-line.js';
import { createLogParser } from '../../src/core/reading-log.js';
import { readCachedIndex } from '../../src/share/library-cache.js';
import { openOutbox } from '../../src/share/outbox.js';
import { checkFile } from '../../src/store/check-file.js';
import { readCases } from '../../src/store/read-cases.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const key = '"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}';
const untouched = (): void => expect(({} as Record<string, unknown>).polluted).toBeUndefined();

describe('a prototype key', () => {
  it.each([
    'pinwalk-profile/1',
    'pinwalk-driver/1',
    'pinwalk-config/1',
    'pinwalk-drill/1',
    'pinwalk-pads/1',
    'pinwalk-library/1',
  ])('should be refused in a file of %s', (format) => {
    const path = join(temporaryFolder(), 'file.json');
    writeFileSync(path, `{"format":"${format}",${key}}`);
    expect(checkFile(path).problems.length).toBeGreaterThan(0);
    untouched();
  });

  it('should give no field to an event', () => {
    const line = `{"seq":0,"t":1,"type":"walk-freed","reason":"negative",${key},"prev":"0"}`;
    const { event } = decodeLine(line, 1);
    expect(Object.keys(event).sort()).toEqual(['reason', 'seq', 't', 'type']);
    expect(Object.getPrototypeOf(event)).toBe(Object.prototype);
    untouched();
  });

  it('should be refused in a reading log', () => {
    expect(() => createLogParser()(`{"t":1,"fault":"x",${key}}`)).toThrow(/unknown key/u);
    untouched();
  });

  it('should be passed over with what holds it: outbox, cached library, sessions of a folder, results', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, `${'a'.repeat(64)}.json`), `{${key}}`);
    expect(openOutbox(folder).items()).toEqual([]);
    writeFileSync(join(folder, 'index.json'), `{${key}}`);
    expect(readCachedIndex(folder)).toBeNull();
    mkdirSync(join(folder, 'sessions'));
    writeFileSync(join(folder, 'sessions/a.jsonl'), `{"type":"session-opened",${key}}\n`);
    expect([...readCases(join(folder, 'sessions'))].every((found) => 'problem' in found)).toBe(
      true,
    );
    expect(readResult(`{${key}}`)).toBeNull();
    untouched();
  });
});
