// A private folder for the files that players play, gone when it is removed. Names come from here, never from
// what is said.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CueKind } from '../core/cues/cue.js';
import { renderTone } from '../core/cues/render-tone.js';
import { sheet } from '../core/cues/sheet.js';
import { wavOf } from '../core/cues/wav.js';
import { soundFolderPrefix, sweepSounds } from './sweep-sounds.js';

export interface Sound {
  readonly path: string;
  readonly seconds: number;
}

export interface SoundFolder {
  /** The tone of a cue, rendered when it is first asked for. @throws where the folder cannot be written. */
  tone(kind: CueKind): Sound;
  /** Nothing, for a moment: shows whether a player works. */
  silence(): Sound;
  newPath(): string;
  remove(): void;
}

const sampleRate = 22050;
const silenceS = 0.03;

/** @throws where no folder can be made. */
export const createSoundFolder = (parent = tmpdir()): SoundFolder => {
  sweepSounds(parent);
  const folder = mkdtempSync(join(parent, soundFolderPrefix(process.pid)));
  const tones = new Map<CueKind, Sound>();
  let files = 0;
  const newPath = (): string => {
    files += 1;
    return join(folder, `${files}.wav`);
  };
  const write = (samples: Int16Array): Sound => {
    const path = newPath();
    writeFileSync(path, wavOf(samples, sampleRate));
    return { path, seconds: samples.length / sampleRate };
  };
  return {
    tone: (kind) => {
      const sound = tones.get(kind) ?? write(renderTone(sheet[kind].tone, sampleRate));
      tones.set(kind, sound);
      return sound;
    },
    silence: () => write(new Int16Array(silenceS * sampleRate)),
    newPath,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
};
