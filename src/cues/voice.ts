// Speech rendered ahead to files, one phrase at a time and likeliest first, so that it can be played at once.
// Trusts no exit code: what counts is a file that holds sound.
import { readFileSync, rmSync } from 'node:fs';
import { wavSeconds } from '../core/cues/wav.js';
import type { Clock } from '../session/ports.js';
import { endOf, type Start } from './process.js';
import type { Sound, SoundFolder } from './sound-folder.js';
import type { Synthesiser } from './synthesisers.js';

export interface Voice {
  /** The phrase, if it has been rendered. */
  ready(text: string): Sound | undefined;
  /** The phrase, rendered before all others; null where it cannot be. */
  wanted(text: string): Promise<Sound | null>;
  /** What will probably be wanted, likeliest first. */
  prepare(texts: readonly string[]): void;
  /** Settles when nothing is being rendered. */
  quiet(): Promise<void>;
}

export interface VoiceSetup {
  readonly synthesisers: readonly Synthesiser[];
  readonly language: string;
  readonly folder: SoundFolder;
  readonly start: Start;
  readonly clock: Clock;
  readonly signal: AbortSignal;
  /** Told at the first phrase that cannot be rendered; none is tried after it. */
  readonly failed: () => void;
}

/** A short phrase takes a hundredth of a second; a machine may be busy. Seconds. */
const patienceS = 5;
const mostKept = 200;
const mostQueued = 80;

/** Speaks through the first synthesiser that renders `sample`, or returns null. */
export const findVoice = async (sample: string, setup: VoiceSetup): Promise<Voice | null> => {
  for (const synthesiser of setup.synthesisers) {
    const render = (text: string): Promise<Sound | null> => renderBy(synthesiser, text, setup);
    const sound = await render(sample);
    if (sound !== null) return voiceOf(render, new Map([[sample, sound]]), setup);
    if (setup.signal.aborted) break;
  }
  return null;
};

const renderBy = async (
  synthesiser: Synthesiser,
  text: string,
  { folder, start, clock, signal, language }: VoiceSetup,
): Promise<Sound | null> => {
  const path = folder.newPath();
  const running = start(synthesiser.command(text, path, language));
  await endOf(running, { clock, seconds: patienceS, signal });
  const seconds = secondsOf(path);
  return seconds > 0 ? { path, seconds } : null;
};

const secondsOf = (path: string): number => {
  try {
    return wavSeconds(readFileSync(path));
  } catch {
    return 0;
  }
};

const voiceOf = (
  render: (text: string) => Promise<Sound | null>,
  kept: Map<string, Sound>,
  { signal, failed }: VoiceSetup,
): Voice => {
  const waiting = new Map<string, (sound: Sound | null) => void>();
  let queue: string[] = [];
  let working: Promise<void> | null = null;
  let broken = false;

  const renderAll = async (): Promise<void> => {
    for (let text = queue.shift(); text !== undefined; text = queue.shift()) {
      const sound = broken || signal.aborted ? null : (kept.get(text) ?? (await render(text)));
      if (sound !== null) keep(text, sound);
      else if (!broken && !signal.aborted) {
        broken = true;
        failed();
      }
      waiting.get(text)?.(sound);
      waiting.delete(text);
    }
  };

  const work = (): void => {
    if (working !== null || queue.length === 0) return;
    working = renderAll().finally(() => {
      working = null;
      work();
    });
  };

  const keep = (text: string, sound: Sound): void => {
    kept.set(text, sound);
    const [oldest] = kept;
    if (kept.size <= mostKept || oldest === undefined) return;
    kept.delete(oldest[0]);
    rmSync(oldest[1].path, { force: true });
  };

  return {
    ready: (text) => kept.get(text),
    wanted: (text) =>
      new Promise((resolve) => {
        const before = waiting.get(text);
        waiting.set(text, (sound) => {
          before?.(sound);
          resolve(sound);
        });
        queue.unshift(text);
        work();
      }),
    prepare: (texts) => {
      const fresh = texts.filter((text) => !kept.has(text));
      queue = [...new Set([...waiting.keys(), ...fresh, ...queue])].slice(0, mostQueued);
      work();
    },
    quiet: async () => {
      while (working !== null) await working;
    },
  };
};
