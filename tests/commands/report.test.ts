import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { exitCodeFor, linesFor } from '../../src/commands/failures.js';
import { reportCommand } from '../../src/commands/report.js';
import type { WalkEvent } from '../../src/core/events.js';
import { createJournal } from '../../src/store/journal-writer.js';
import { eventful } from '../report/session-events.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const saved = async (
  name = 'session.jsonl',
  events: readonly WalkEvent[] = eventful,
): Promise<{
  readonly path: string;
  readonly fingerprint: string;
  beside(name: string): string;
}> => {
  const folder = temporaryFolder();
  const path = join(folder, name);
  const journal = createJournal(path);
  journal.append(events);
  const { fingerprint } = journal;
  await journal.close();
  return { path, fingerprint, beside: (other) => join(folder, other) };
};

/** What the command printed; rejects as the command does. */
const report = async (...args: readonly string[]): Promise<string> => {
  const printed = vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
  try {
    await reportCommand().exitOverride().parseAsync(args, { from: 'user' });
    return printed.mock.calls.map(([text]) => String(text)).join('');
  } finally {
    printed.mockRestore();
  }
};

describe('report', () => {
  it('should write a page beside the session, with its fingerprint', async () => {
    const { path, fingerprint, beside } = await saved();
    expect(await report(path)).toContain(beside('session.html'));
    const html = readFileSync(beside('session.html'), 'utf8');
    expect(html).toContain('<h1>Handover report</h1>');
    expect(html).toContain(fingerprint);
    expect(html).toContain('pinwalk check session.jsonl');
  });

  it.each([
    ['pins.csv', 'connector,pin,line'],
    ['note.md', '# Handover report'],
    ['page.HTML', '<!doctype html>'],
    ['page', '<!doctype html>'],
  ])('should tell the form by the ending of %s', async (name, begins) => {
    const { path, beside } = await saved();
    await report(path, '--out', beside(name));
    expect(readFileSync(beside(name), 'utf8').startsWith(begins)).toBe(true);
  });

  it('should take the form that is asked for whatever the ending', async () => {
    const { path, beside } = await saved();
    await report(path, '--out', beside('pins.txt'), '--format', 'csv');
    expect(readFileSync(beside('pins.txt'), 'utf8')).toMatch(/^connector,pin/u);
    await report(path, '--format', 'markdown');
    expect(existsSync(beside('session.md'))).toBe(true);
  });

  it('should write to standard output and make no file', async () => {
    const { path, beside } = await saved();
    expect(await report(path, '--out', '-', '--format', 'csv')).toMatch(/^connector,pin/u);
    expect(existsSync(beside('session.csv'))).toBe(false);
  });

  it('should speak Arabic when asked', async () => {
    const { path } = await saved();
    expect(await report(path, '--out', '-', '--language', 'ar')).toContain('dir="rtl"');
    await expect(report(path, '--out', '-', '--language', 'xx')).rejects.toThrow(/en, ar/u);
  });

  it('should name the file in JSON when asked', async () => {
    const { path, beside } = await saved();
    expect(JSON.parse(await report(path, '--json'))).toEqual({
      type: 'report-written',
      file: beside('session.html'),
      format: 'html',
      language: 'en',
    });
  });

  it('should never replace a file unless told to', async () => {
    const { path, beside } = await saved();
    writeFileSync(beside('session.html'), 'mine');
    const refusal: unknown = await report(path).catch((error: unknown) => error);
    expect(exitCodeFor(refusal)).toBe(5);
    expect(linesFor(refusal)).toEqual([expect.stringMatching(/is there already.*--force/u)]);
    expect(readFileSync(beside('session.html'), 'utf8')).toBe('mine');
    await report(path, '--force');
    expect(readFileSync(beside('session.html'), 'utf8')).toContain('<h1>');
  });

  it('should never replace a session, not even by force', async () => {
    const { path } = await saved();
    const before = readFileSync(path, 'utf8');
    await expect(report(path, '--out', path, '--force')).rejects.toThrow(/is a session/u);
    expect(readFileSync(path, 'utf8')).toBe(before);
  });

  it('should hand over nothing from a session that was changed', async () => {
    const { path, beside } = await saved();
    writeFileSync(path, readFileSync(path, 'utf8').replace('"value":1213', '"value":4713'));
    await expect(report(path)).rejects.toThrow(/was changed after it was written/u);
    expect(existsSync(beside('session.html'))).toBe(false);
  });

  it('should say that the last entry was never finished', async () => {
    const { path } = await saved();
    const whole = readFileSync(path);
    writeFileSync(path, whole.subarray(0, whole.length - 9));
    expect(await report(path, '--out', '-')).toContain('the last entry was never finished');
  });

  it('should say what is no session', async () => {
    const { beside } = await saved();
    const profile = new URL('../../profiles/demo.json', import.meta.url).pathname;
    await expect(report(profile)).rejects.toThrow(/is a profile; name a saved session/u);
    await expect(report(beside('none.jsonl'))).rejects.toThrow(/none.jsonl/u);
    writeFileSync(beside('empty.jsonl'), '');
    await expect(report(beside('empty.jsonl'))).rejects.toThrow(/empty/u);
  });
});
