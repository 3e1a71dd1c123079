// Sounds a moment by the best means that works: speech, else tones, else the terminal bell. Each step down is
// said once and is for good. Refuses to throw.
import type { Cue } from '../core/cues/cue.js';
import { levels } from '../core/cues/cue.js';
import type { Moment } from '../core/cues/moment.js';
import type { Words } from '../core/words/words.js';
import type { Clock } from '../session/ports.js';
import { findLoudspeaker, type Loudspeaker } from './loudspeaker.js';
import type { Start } from './process.js';
import type { SoundFolder } from './sound-folder.js';
import type { Synthesiser } from './synthesisers.js';
import type { SystemPlayer } from './system-players.js';
import { findVoice, type Voice } from './voice.js';

export interface SounderSetup {
  readonly mode: 'tones' | 'speech' | 'bell';
  readonly words: Words;
  readonly clock: Clock;
  readonly start: Start;
  readonly players: readonly SystemPlayer[];
  readonly synthesisers: readonly Synthesiser[];
  /** @throws where no folder can be made. */
  readonly makeFolder: () => SoundFolder;
  /** Rings the terminal bell once. */
  readonly bell: () => void;
  /** Told in one line why the cues are not what was asked for. */
  readonly says: (text: string) => void;
}

export interface Sounder {
  /** Settles when the moment is over; soon after the signal, if that comes first. */
  sound(moment: Moment, signal: AbortSignal): Promise<void>;
  prepare(cues: readonly Cue[]): void;
  close(): Promise<void>;
}

/** Rings that come closer than this run into one on many terminals. Common practice, no source. */
const ringGapS = 0.22;

export const createSounder = (setup: SounderSetup): Sounder => {
  const { mode, words, clock, start, says } = setup;
  const { unable } = words.spoken;
  const closing = new AbortController();
  let folder: SoundFolder | null = null;
  let loudspeaker: Loudspeaker | null = null;
  let voice: Voice | null = null;
  let speaks = false;

  const open = async (): Promise<void> => {
    if (mode === 'bell') return;
    const around = { start, clock, signal: closing.signal };
    try {
      folder = setup.makeFolder();
      const { players, synthesisers } = setup;
      loudspeaker = await findLoudspeaker(folder.silence(), { ...around, players });
      if (loudspeaker !== null && mode === 'speech') {
        const { language, spoken } = words;
        const failed = (): void => {
          speaks = false;
          says(unable.voiceFailed);
        };
        const voices = { ...around, synthesisers, language, folder, failed };
        voice = await findVoice(spoken.touchGround, voices);
        speaks = voice !== null;
      }
    } catch {
      loudspeaker = null;
    }
    if (closing.signal.aborted) return;
    if (loudspeaker === null) says(unable.noPlayer);
    else if (mode === 'speech' && voice === null) says(unable.noVoice);
  };
  const opened = open();

  const ring = async (cues: readonly Cue[], signal: AbortSignal): Promise<void> => {
    const times = Math.max(...cues.map(({ bells }) => bells));
    for (let i = 0; i < times && !signal.aborted; i += 1) {
      setup.bell();
      await pause(clock, ringGapS, signal);
    }
  };

  /** A stop begins with its tone, and so does what has not been rendered yet; then come the words. */
  const soundCue = async (cue: Cue, by: Loudspeaker, signal: AbortSignal): Promise<boolean> => {
    const speaking = speaks && cue.speech !== '' ? voice : null;
    const rendered = speaking?.ready(cue.speech);
    if (folder !== null && (rendered === undefined || cue.level === levels.stop)) {
      if (!(await by.play(folder.tone(cue.kind), signal))) return false;
    }
    if (speaking === null || signal.aborted) return true;
    const speech = rendered ?? (await orNull(speaking.wanted(cue.speech), signal));
    return speech === null || signal.aborted ? true : by.play(speech, signal);
  };

  return {
    sound: async ({ cues }, signal) => {
      await opened;
      if (signal.aborted) return;
      if (loudspeaker === null) return ring(cues, signal);
      for (const cue of cues) {
        const heard = await soundCue(cue, loudspeaker, signal).catch(() => false);
        if (signal.aborted) return;
        if (heard) continue;
        loudspeaker = null;
        says(unable.playerFailed);
        return ring(cues, signal);
      }
    },
    prepare: (cues) =>
      void opened.then(() => {
        if (speaks) voice?.prepare(cues.map(({ speech }) => speech));
      }),
    close: async () => {
      closing.abort();
      await opened;
      await voice?.quiet();
      folder?.remove();
    },
  };
};

const pause = (clock: Clock, seconds: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const cancel = clock.after(seconds, resolve);
    signal.addEventListener('abort', () => {
      cancel();
      resolve();
    });
  });

const orNull = <T>(promise: Promise<T>, signal: AbortSignal): Promise<T | null> =>
  Promise.race([
    promise,
    new Promise<null>((resolve) => signal.addEventListener('abort', () => resolve(null))),
  ]);
