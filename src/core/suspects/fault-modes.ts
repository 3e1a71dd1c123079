// The ways in which a joint, part or chip can be at fault, and what each does to its line. Refuses nothing:
// a place has one mode at a time or is sound.

/**
 * `broken`: open, whatever is done to it. `loose`: open, closed while its part is pressed. `cracked`: sound,
 * open while pressed. `bridged`: sound, shorted to ground while pressed. `shorted`: shorted to ground.
 * `leaky`: a path to ground beside the line, which reads low (a damaged input or protection part). `raised`:
 * a resistance in the line, which reads high (a poor joint, a wrong or damaged part).
 */
const faultModes = ['broken', 'loose', 'cracked', 'bridged', 'shorted', 'leaky', 'raised'] as const;
export type FaultMode = (typeof faultModes)[number];

/** What a place makes its line read: its own value, a short to ground, too little, too much. */
export type Load = 'none' | 'short' | 'low' | 'high';

export interface Effect {
  readonly open: boolean;
  readonly load: Load;
}

const sound: Effect = { open: false, load: 'none' };
const opened: Effect = { open: true, load: 'none' };
const shorted: Effect = { open: false, load: 'short' };

const atRest: Readonly<Record<FaultMode, Effect>> = {
  broken: opened,
  loose: opened,
  cracked: sound,
  bridged: sound,
  shorted,
  leaky: { open: false, load: 'low' },
  raised: { open: false, load: 'high' },
};

const underPressure: Readonly<Record<FaultMode, Effect>> = {
  ...atRest,
  loose: sound,
  cracked: opened,
  bridged: shorted,
};

export const effectOf = (mode: FaultMode, pressed: boolean): Effect =>
  (pressed ? underPressure : atRest)[mode];

/** Modes that answer to pressure may also answer to the probe: their line may not hold still. */
export const isIntermittent = (mode: FaultMode): boolean =>
  mode === 'loose' || mode === 'cracked' || mode === 'bridged';
