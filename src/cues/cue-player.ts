// Lets a person follow the walk by ear. Hears events, sounds their cues one moment at a time, and never keeps
// the one who tells it waiting: whatever takes time happens after it has returned.

import type { CueMode } from '../core/cue-mode.js';
import type { Cue } from '../core/cues/cue.js';
import { levels } from '../core/cues/cue.js';
import { cueFor } from '../core/cues/cue-for.js';
import { likelyCues, standingCues } from '../core/cues/likely-cues.js';
import { type Moment, momentOf } from '../core/cues/moment.js';
import type { WalkEvent } from '../core/events.js';
import type { WalkState } from '../core/walk/state.js';
import type { Words } from '../core/words/words.js';
import type { Clock } from '../session/ports.js';
import { type Start, startProcess } from './process.js';
import { createSoundFolder, type SoundFolder } from './sound-folder.js';
import { createSounder } from './sounder.js';
import { type Synthesiser, systemSynthesisers } from './synthesisers.js';
import { type SystemPlayer, systemPlayers } from './system-players.js';
import { createTurns } from './turns.js';

export interface CuePlayerSetup {
  readonly mode: CueMode;
  readonly words: Words;
  readonly clock: Clock;
  /** Rings the terminal bell once. */
  readonly bell: () => void;
  /** Told in one line, once for each, why the cues are not what was asked for. */
  readonly says: (text: string) => void;
  readonly start?: Start;
  readonly players?: readonly SystemPlayer[];
  readonly synthesisers?: readonly Synthesiser[];
  /** @throws where no folder can be made. */
  readonly makeFolder?: () => SoundFolder;
}

export interface CuePlayer {
  /** @param state the state after the event, or after all that was decided with it. */
  follow(event: WalkEvent, state: WalkState): void;
  /** Sounds again what sounded last. */
  repeat(): void;
  /** Ends the sound, or lets a finished walk's last words end first; then removes every file. */
  close(): Promise<void>;
}

/** The longest last words. Seconds. */
const lastWordsS = 6;

const silent: CuePlayer = {
  follow: () => undefined,
  repeat: () => undefined,
  close: () => Promise.resolve(),
};

export const createCuePlayer = (setup: CuePlayerSetup): CuePlayer => {
  const { mode, words, clock } = setup;
  if (mode === 'off') return silent;
  const sounder = createSounder({
    start: startProcess,
    players: systemPlayers(process.env.SystemRoot),
    synthesisers: systemSynthesisers,
    makeFolder: createSoundFolder,
    ...setup,
    mode,
  });
  const turns = createTurns((moment, signal) => sounder.sound(moment, signal));
  let gathered: { readonly t: number; readonly cues: Cue[]; state: WalkState } | null = null;
  let last: Moment | null = null;
  let finished = false;

  const sound = (moment: Moment): void => {
    last = moment;
    turns.take(moment);
  };

  const soundGathered = (): void => {
    if (gathered === null) return;
    const { cues, state } = gathered;
    gathered = null;
    sound(momentOf(cues));
    if (mode === 'speech') {
      sounder.prepare([...likelyCues(state, words), ...standingCues(state, words)]);
    }
  };

  return {
    follow: (event, state) => {
      if (event.type === 'session-closed') finished = event.reason === 'finished';
      const cue = cueFor(event, state, words);
      if (cue === null) return;
      if (gathered?.t !== event.t) soundGathered();
      if (gathered === null) {
        gathered = { t: event.t, cues: [], state };
        clock.after(0, soundGathered);
      }
      gathered.cues.push(cue);
      gathered.state = state;
    },
    repeat: () => {
      soundGathered();
      if (last === null) return;
      // Who asks for it wants it: what was an echo then is a word now.
      turns.take(last.level === levels.echo ? { ...last, level: levels.word } : last);
    },
    close: async () => {
      soundGathered();
      if (finished) {
        const enough = new Promise<void>((resolve) => clock.after(lastWordsS, resolve));
        await Promise.race([turns.quiet(), enough]);
      }
      turns.stop();
      await turns.quiet();
      await sounder.close();
    },
  };
};
