// A small session to write, cut and damage.
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { EventOf, WalkEvent } from '../../src/core/events.js';

export const opened: EventOf<'session-opened'> = {
  type: 'session-opened',
  t: 0,
  format: 'pinwalk-session/1',
  program: 'pinwalk 0.1.0',
  wallTime: '2026-01-31T09:15:30.000Z',
  zone: 'Etc/UTC',
  link: 'virtual:demo',
  simulated: true,
  profile: {
    id: 'tiny',
    sha256: '0'.repeat(64),
    content: {
      format: 'pinwalk-profile/1',
      id: 'tiny',
      title: 'Tiny µ',
      provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
      measure: { function: 'resistance', polarity: 'red-walks' },
      connector: { id: 'J1', pins: [{ pin: '1', line: 'GND' }] },
      lines: { GND: { kind: 'ground' } },
    },
  },
  driver: null,
  measure: { function: 'resistance', polarity: 'red-walks' },
  accuracy: {
    from: 'assumed',
    fullScaleCounts: 6000,
    rows: [{ fullScale: null, resolution: null, percent: 0.5, counts: 3 }],
  },
  groundCheck: true,
};

export const reading = (t: number): EventOf<'reading-taken'> => ({
  type: 'reading-taken',
  t,
  function: 'resistance',
  value: Math.round(3880 + 10 * Math.sin(t)) / 10,
});

export const note = (t: number, text: string): EventOf<'act-taken'> => ({
  type: 'act-taken',
  t,
  act: 'note',
  text,
});

export const resumed = (t: number, tornBytes: number): EventOf<'session-resumed'> => ({
  type: 'session-resumed',
  t,
  program: 'pinwalk 0.1.0',
  wallTime: '2026-01-31T09:20:00.000Z',
  zone: 'Etc/UTC',
  tornBytes,
});

export const sample: readonly WalkEvent[] = [
  opened,
  reading(0.5),
  note(0.75, 'heiß – 120 Ω'),
  reading(1),
  { type: 'reading-taken', t: 1.5, function: 'resistance', overload: true },
  { type: 'session-closed', t: 2, reason: 'left' },
];

/** In memory where the platform offers it: tests that write a file for every byte need no real disk. */
const parent = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

/** A folder for one test; give its removal to `afterEach`. */
export const temporaryFolder = (): { path: (name: string) => string; remove: () => void } => {
  const folder = mkdtempSync(join(parent, 'pinwalk-store-'));
  return {
    path: (name) => join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
};
