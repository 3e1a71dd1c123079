import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readToken } from '../../src/share/token.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const put = (text: string, mode: number): string => {
  const path = join(temporaryFolder(), 'token');
  writeFileSync(path, text);
  chmodSync(path, mode);
  return path;
};

describe('the token', () => {
  it('should come from the environment before the file, or not at all', () => {
    const file = put('from-file\n', 0o600);
    expect(readToken(file, { PINWALK_TOKEN: 'from-env' })).toBe('from-env');
    expect(readToken(file, {})).toBe('from-file');
    expect(readToken(undefined, {})).toBeNull();
  });

  it.each([0o640, 0o604, 0o660, 0o644, 0o610])('should be refused in a file of mode %o', (mode) => {
    expect(() => readToken(put('abc', mode), {})).toThrow('open-to-others');
  });

  it.each(['', 'two words', 'a\nb', 'a\u0000', 'a\r\nX-Evil: 1', 'é', 'x'.repeat(5000)])(
    'should be one line of plain characters, not %j, and never shown',
    (text) => {
      let said = '';
      try {
        readToken(put(text, 0o600), {});
      } catch (error) {
        said = String(error);
      }
      expect(said).toContain('no-token');
      if (text !== '') expect(said).not.toContain(text);
    },
  );

  it('should not be looked for in a file that is not there', () => {
    expect(() => readToken('/nonexistent/token', {})).toThrow('unreadable');
  });
});
