import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OutFileError, writeOut } from '../../src/store/write-out.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const kept = { force: false };

describe('writeOut', () => {
  it('should write the whole file and leave nothing beside it', () => {
    const folder = temporaryFolder();
    writeOut(join(folder, 'a.html'), 'whole', kept);
    expect(readdirSync(folder)).toEqual(['a.html']);
    expect(readFileSync(join(folder, 'a.html'), 'utf8')).toBe('whole');
  });

  it('should never replace a file, except by force', () => {
    const folder = temporaryFolder();
    const path = join(folder, 'a.html');
    writeFileSync(path, 'mine');
    expect(() => writeOut(path, 'new', kept)).toThrow(/is there already.*--force/u);
    expect(readFileSync(path, 'utf8')).toBe('mine');
    writeOut(path, 'new', { force: true });
    expect(readFileSync(path, 'utf8')).toBe('new');
    expect(readdirSync(folder)).toEqual(['a.html']);
  });

  it('should not write through a link to elsewhere', () => {
    const folder = temporaryFolder();
    const elsewhere = join(folder, 'elsewhere');
    writeFileSync(elsewhere, 'mine');
    symlinkSync(elsewhere, join(folder, 'a.html'));
    expect(() => writeOut(join(folder, 'a.html'), 'new', kept)).toThrow(/is there already/u);
    writeOut(join(folder, 'a.html'), 'new', { force: true });
    expect(readFileSync(elsewhere, 'utf8')).toBe('mine');
    expect(readFileSync(join(folder, 'a.html'), 'utf8')).toBe('new');
  });

  it('should say what is wrong and what to do', () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'sub'));
    expect(() => writeOut(join(folder, 'sub'), 'x', { force: true })).toThrow(/is a folder/u);
    expect(() => writeOut(join(folder, 'none', 'a.html'), 'x', kept)).toThrow(/make it first/u);
    expect(() => writeOut('/dev/null', 'x', { force: true })).toThrow(/--out -/u);
    expect(() => writeOut(join(folder, 'sub'), 'x', kept)).toThrow(OutFileError);
  });

  it('should say so where nothing may be written', () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o500);
    // Root may write anywhere, so that only its kernel can refuse it: /proc takes no new files.
    const place = process.getuid?.() === 0 ? '/proc/a.html' : join(folder, 'a.html');
    expect(() => writeOut(place, 'x', kept)).toThrow(OutFileError);
  });
});
