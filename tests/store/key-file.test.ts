import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { forgetKeys, readKeys, writeKeys } from '../../src/store/key-file.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const path = (): string => join(temporaryFolder(), 'config', 'keys.json');

describe('the file of keys', () => {
  it('should give back what was written, and nothing once it is forgotten', () => {
    const file = path();
    expect(readKeys(file)).toEqual({});
    writeKeys({ open: ['f13'], next: ['f14', 'n'] }, file);
    expect(readKeys(file)).toEqual({ open: ['f13'], next: ['f14', 'n'] });
    expect(JSON.parse(readFileSync(file, 'utf8')).format).toBe('pinwalk-keys/1');
    forgetKeys(file);
    expect(readKeys(file)).toEqual({});
  });

  it.each([
    ['{', 'keys.json:1'],
    ['{"format":"pinwalk-keys/1","keys":{"open":"o"}}', 'no file of keys'],
    ['{"format":"pinwalk-keys/9","keys":{}}', 'no file of keys'],
    ['{"format":"pinwalk-keys/1","keys":{},"more":1}', 'no file of keys'],
  ])('should refuse %j with a way out', (text, says) => {
    const file = join(temporaryFolder(), 'keys.json');
    writeFileSync(file, text);
    expect(() => readKeys(file)).toThrow(says);
    expect(() => readKeys(file)).toThrow('pinwalk keys --reset');
  });
});
