import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { platformFolders } from '../../src/store/platform-folders.js';
import { newSessionPath, sessionFileName } from '../../src/store/session-paths.js';
import { temporaryFolder } from './sample-session.js';

describe('the folders of a platform', () => {
  // Linux: XDG Base Directory Specification; the others: common practice of the platforms.
  it.each([
    ['linux', {}, '/home/a/.local/share/pinwalk', '/home/a/.config/pinwalk'],
    ['linux', { XDG_DATA_HOME: '/d', XDG_CONFIG_HOME: '/c' }, '/d/pinwalk', '/c/pinwalk'],
    [
      'linux',
      { XDG_DATA_HOME: 'relative', XDG_CONFIG_HOME: '' },
      '/home/a/.local/share/pinwalk',
      '/home/a/.config/pinwalk',
    ],
    ['freebsd', {}, '/home/a/.local/share/pinwalk', '/home/a/.config/pinwalk'],
    [
      'darwin',
      { XDG_DATA_HOME: '/d' },
      '/home/a/Library/Application Support/pinwalk',
      '/home/a/Library/Application Support/pinwalk',
    ],
    ['win32', { LOCALAPPDATA: 'C:\\L', APPDATA: 'C:\\R' }, 'C:\\L\\pinwalk', 'C:\\R\\pinwalk'],
    ['win32', {}, '\\home\\a\\AppData\\Local\\pinwalk', '\\home\\a\\AppData\\Roaming\\pinwalk'],
  ] as const)('should be those of %s with %j', (platform, env, data, config) => {
    expect(platformFolders({ platform, env, home: '/home/a' })).toEqual({ data, config });
  });
});

describe('a new session path', () => {
  let folder: ReturnType<typeof temporaryFolder>;
  beforeEach(() => {
    folder = temporaryFolder();
  });
  afterEach(() => folder.remove());
  const began = new Date('2026-01-31T09:15:30.987Z');

  it('should be named for its time in UTC and its profile', () => {
    expect(sessionFileName('demo', began)).toBe('2026-01-31-091530Z-demo.jsonl');
  });

  it('should never lead out of its folder', () => {
    const name = sessionFileName('../../etc/x y\u001b', began);
    expect(name).toBe('2026-01-31-091530Z-______etc_x_y_.jsonl');
    expect(basename(name)).toBe(name);
    expect(sessionFileName('x'.repeat(500), began).length).toBeLessThan(80);
  });

  it('should be free, however many begin in one second', () => {
    const names = [1, 2, 3].map(() => {
      const path = newSessionPath('demo', began, folder.path('sessions'));
      writeFileSync(path, '', { flag: 'wx' });
      return basename(path);
    });
    expect(names).toEqual([
      '2026-01-31-091530Z-demo.jsonl',
      '2026-01-31-091530Z-demo-2.jsonl',
      '2026-01-31-091530Z-demo-3.jsonl',
    ]);
  });

  it.skipIf(process.platform === 'win32')('should lie in a folder only its owner can read', () => {
    newSessionPath('demo', began, folder.path('made/for/it'));
    expect(statSync(folder.path('made/for/it')).mode & 0o077).toBe(0);
  });

  it('should say why its folder cannot be made', () => {
    mkdirSync(folder.path('d'));
    writeFileSync(folder.path('d/file'), '');
    expect(() => newSessionPath('demo', began, folder.path('d/file/sessions'))).toThrow(
      /part of the path is a file, not a folder/,
    );
  });
});
