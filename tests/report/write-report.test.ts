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
import { ReportFileError, writeReport } from '../../src/report/write-report.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const kept = { force: false };

describe('writeReport', () => {
  it('should write the whole file and leave nothing beside it', () => {
    const folder = temporaryFolder();
    writeReport(join(folder, 'a.html'), 'whole', kept);
    expect(readdirSync(folder)).toEqual(['a.html']);
    expect(readFileSync(join(folder, 'a.html'), 'utf8')).toBe('whole');
  });

  it('should never replace a file, except by force', () => {
    const folder = temporaryFolder();
    const path = join(folder, 'a.html');
    writeFileSync(path, 'mine');
    expect(() => writeReport(path, 'new', kept)).toThrow(/is there already.*--force/u);
    expect(readFileSync(path, 'utf8')).toBe('mine');
    writeReport(path, 'new', { force: true });
    expect(readFileSync(path, 'utf8')).toBe('new');
    expect(readdirSync(folder)).toEqual(['a.html']);
  });

  it('should not write through a link to elsewhere', () => {
    const folder = temporaryFolder();
    const elsewhere = join(folder, 'elsewhere');
    writeFileSync(elsewhere, 'mine');
    symlinkSync(elsewhere, join(folder, 'a.html'));
    expect(() => writeReport(join(folder, 'a.html'), 'new', kept)).toThrow(/is there already/u);
    writeReport(join(folder, 'a.html'), 'new', { force: true });
    expect(readFileSync(elsewhere, 'utf8')).toBe('mine');
    expect(readFileSync(join(folder, 'a.html'), 'utf8')).toBe('new');
  });

  it('should say what is wrong and what to do', () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'sub'));
    expect(() => writeReport(join(folder, 'sub'), 'x', { force: true })).toThrow(/is a folder/u);
    expect(() => writeReport(join(folder, 'none', 'a.html'), 'x', kept)).toThrow(/make it first/u);
    expect(() => writeReport('/dev/null', 'x', { force: true })).toThrow(/--out -/u);
    expect(() => writeReport(join(folder, 'sub'), 'x', kept)).toThrow(ReportFileError);
  });

  it('should say so where nothing may be written', () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o500);
    // Root may write anywhere, so that only its kernel can refuse it: /proc takes no new files.
    const place = process.getuid?.() === 0 ? '/proc/a.html' : join(folder, 'a.html');
    expect(() => writeReport(place, 'x', kept)).toThrow(ReportFileError);
  });
});
