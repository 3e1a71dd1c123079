// Plays sounds through the first system player that proves to work.
import type { Clock } from '../session/ports.js';
import { endOf, type Start } from './process.js';
import type { Sound } from './sound-folder.js';
import type { SystemPlayer } from './system-players.js';

export interface Loudspeaker {
  /** True when the sound was played to its end; on the signal the player is killed. */
  play(sound: Sound, signal: AbortSignal): Promise<boolean>;
}

export interface LoudspeakerSetup {
  readonly players: readonly SystemPlayer[];
  readonly start: Start;
  readonly clock: Clock;
  readonly signal: AbortSignal;
}

/** A player that takes so much longer than its sound hangs. Seconds. */
const graceS = 4;

/** The first player that plays `silence` to its end, or null. */
export const findLoudspeaker = async (
  silence: Sound,
  { players, start, clock, signal }: LoudspeakerSetup,
): Promise<Loudspeaker | null> => {
  for (const player of players) {
    const play: Loudspeaker['play'] = ({ path, seconds }, until) =>
      endOf(start(player.command(path)), { clock, seconds: seconds + graceS, signal: until });
    if (await play(silence, signal)) return { play };
    if (signal.aborted) break;
  }
  return null;
};
