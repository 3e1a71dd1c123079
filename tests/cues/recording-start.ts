// Stands in for the starting of processes: keeps a record of what was started, when, and how it ended, in the
// time of a hand-moved clock.
import { writeFileSync } from 'node:fs';
import { wavOf } from '../../src/core/cues/wav.js';
import type { Command, Start } from '../../src/cues/process.js';
import { type HandClock, handClock } from '../link/hand-clock.js';

export interface Run {
  readonly program: string;
  readonly args: readonly string[];
  /** The last argument: a player's file. */
  readonly path: string;
  readonly fromS: number;
  toS: number | null;
  how: 'playing' | 'well' | 'badly' | 'killed';
}

export interface RecordingStart {
  readonly clock: HandClock;
  readonly start: Start;
  readonly runs: readonly Run[];
  /** Moves the clock on in steps of a millisecond, with time for promises between them. */
  pass(seconds: number): Promise<void>;
}

export interface Behaviour {
  /** How long a run takes; null where it never ends by itself. */
  readonly seconds: number | null;
  readonly well: boolean;
  /** What a synthesiser leaves behind. */
  readonly writes?: { readonly path: string; readonly bytes: Uint8Array };
}

export const recordingStart = (behave: (command: Command) => Behaviour): RecordingStart => {
  const clock = handClock();
  const runs: Run[] = [];
  const start: Start = (command) => {
    const { seconds, well, writes } = behave(command);
    const run: Run = {
      program: command.program,
      args: command.args,
      path: command.args.at(-1) ?? '',
      fromS: clock.now(),
      toS: null,
      how: 'playing',
    };
    runs.push(run);
    let kill: () => void = () => undefined;
    const ended = new Promise<boolean>((resolve) => {
      const end = (how: Run['how']): void => {
        if (run.toS !== null) return;
        run.toS = clock.now();
        run.how = how;
        if (how === 'well' && writes !== undefined) writeFileSync(writes.path, writes.bytes);
        resolve(how === 'well');
      };
      kill = () => end('killed');
      if (seconds !== null) clock.after(seconds, () => end(well ? 'well' : 'badly'));
    });
    return { ended, kill: () => kill() };
  };
  const pass = async (seconds: number): Promise<void> => {
    for (let ms = 0; ms < Math.round(seconds * 1000); ms += 1) {
      await new Promise((resolve) => setImmediate(resolve));
      clock.advance(0.001);
    }
    await new Promise((resolve) => setImmediate(resolve));
  };
  return { clock, start, runs, pass };
};

/** A synthesiser's file: so many seconds of something. */
export const spokenWav = (seconds: number): Uint8Array =>
  wavOf(new Int16Array(Math.round(seconds * 8000)).fill(1000), 8000);
