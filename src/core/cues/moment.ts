// What sounds of several cues that belong to one moment: only the highest level. Words of the walk follow each
// other, each once; of stops only the last, which says how things stand.
import { type Cue, type Level, levels } from './cue.js';

export interface Moment {
  readonly level: Level;
  readonly cues: readonly Cue[];
}

/** @throws RangeError where nothing sounds. */
export const momentOf = (cues: readonly Cue[]): Moment => {
  const [highest] = [...cues].sort((a, b) => b.level - a.level);
  if (highest === undefined) throw new RangeError('a moment has at least one cue');
  const { level } = highest;
  const loudest = cues.filter((cue) => cue.level === level);
  if (level === levels.stop) return { level, cues: loudest.slice(-1) };
  const once = loudest.filter(
    (cue, at) =>
      loudest.findIndex(({ kind, speech }) => kind === cue.kind && speech === cue.speech) === at,
  );
  return { level, cues: once };
};
