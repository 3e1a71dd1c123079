// A reply pad: a resistor of known value on a scrap board, its other end on ground. Touched twice it is a command,
// given without letting go of a probe.

export const padCommands = [
  'open',
  'back',
  'next',
  'skip',
  'press-test',
  'note',
  'repeat-cue',
] as const;
export type PadCommand = (typeof padCommands)[number];

export interface Pad {
  readonly command: PadCommand;
  /** What the meter in use reads on it, in the function's unit. */
  readonly value: number;
  /** Of that value: how well the same meter reads it twice, not how true it is. */
  readonly standardUncertainty: number;
}
