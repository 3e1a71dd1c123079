// A cue player whose processes are recorded instead of started, and what it takes to listen to it.
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { renderTone } from '../../src/core/cues/render-tone.js';
import { sheet } from '../../src/core/cues/sheet.js';
import { wavOf } from '../../src/core/cues/wav.js';
import type { WalkEvent } from '../../src/core/events.js';
import type { Verdict } from '../../src/core/verdict.js';
import { openWalk } from '../../src/core/walk/open-walk.js';
import { english } from '../../src/core/words/english.js';
import { type CuePlayer, type CuePlayerSetup, createCuePlayer } from '../../src/cues/cue-player.js';
import { createSoundFolder } from '../../src/cues/sound-folder.js';
import type { SystemPlayer } from '../../src/cues/system-players.js';
import { openedDemo } from '../core/cues/opened-demo.js';
import {
  type Behaviour,
  type RecordingStart,
  type Run,
  recordingStart,
} from './recording-start.js';

const kinds = new Map(
  Object.entries(sheet).map(([kind, { tone }]) => [
    Buffer.from(wavOf(renderTone(tone, 22050), 22050)).toString('base64'),
    kind,
  ]),
);

/** Which cue's tone a file holds; "silence" for the probe's, "?" for anything else. */
export const toneIn = (path: string): string => {
  const bytes = readFileSync(path);
  if (bytes.subarray(44).every((byte) => byte === 0)) return 'silence';
  return kinds.get(bytes.toString('base64')) ?? '?';
};

export const secondsIn = (path: string): number => {
  const bytes = readFileSync(path);
  return (bytes.length - 44) / bytes.readUInt32LE(28);
};

export const opened = openedDemo();
export const start = openWalk(opened);

export const judged = (
  pin: string,
  verdict: Verdict,
  t: number,
  agreed = verdict === 'normal',
): WalkEvent => ({
  type: 'pin-judged',
  t,
  pin,
  line: 'X',
  verdict,
  confidence: 1,
  expected: null,
  agreed,
});

export const player = (title: string): SystemPlayer => ({
  title,
  command: (path) => ({ program: title, args: [path] }),
});

export interface Rehearsal extends RecordingStart {
  readonly player: CuePlayer;
  readonly said: string[];
  /** When the bell rang, in seconds. */
  readonly rings: number[];
  readonly folder: string;
  /** Runs of players after the probe, as what they played. */
  heard(): { readonly what: string; readonly run: Run }[];
  tell(...events: readonly WalkEvent[]): void;
  folderIsThere(): boolean;
}

/** @param behave how a command other than a working player behaves. */
export const rehearse = (
  setup: Partial<CuePlayerSetup> & Pick<CuePlayerSetup, 'mode'>,
  behave: (program: string, args: readonly string[]) => Behaviour | null = () => null,
): Rehearsal => {
  const recording = recordingStart(({ program, args }) => {
    const path = args.at(-1) ?? '';
    return behave(program, args) ?? { seconds: existsSync(path) ? secondsIn(path) : 0, well: true };
  });
  const { clock, runs } = recording;
  const rings: number[] = [];
  const said: string[] = [];
  const parent = mkdtempSync(join(tmpdir(), 'pinwalk-test-'));
  onTestFinished(() => rmSync(parent, { recursive: true, force: true }));
  const names = new Map<Run, string>();
  let folder = '';
  const cuePlayer = createCuePlayer({
    words: english,
    clock,
    bell: () => rings.push(clock.now()),
    says: (text) => said.push(text),
    start: (command) => {
      const running = recording.start(command);
      const run = runs.at(-1);
      if (run !== undefined && existsSync(run.path)) names.set(run, toneIn(run.path));
      return running;
    },
    players: [player('works')],
    synthesisers: [],
    makeFolder: () => {
      const made = createSoundFolder(parent);
      folder = join(made.newPath(), '..');
      return made;
    },
    ...setup,
  });
  return {
    ...recording,
    player: cuePlayer,
    said,
    rings,
    get folder() {
      return folder;
    },
    heard: () =>
      runs
        .filter((run) => names.has(run) && names.get(run) !== 'silence')
        .map((run) => ({ what: names.get(run) ?? '', run })),
    tell: (...events) => {
      for (const event of events) cuePlayer.follow(event, start);
    },
    folderIsThere: () => folder !== '' && existsSync(folder),
  };
};
