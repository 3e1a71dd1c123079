// The ways in which a joint, part or chip can be at fault, and what each does to its line. Refuses nothing:
// a place has one mode at a time or is sound.

/**
 * `broken`: open, whatever is done to it. `loose`: open, closed while its part is pressed. `cracked`: sound,
 * open while pressed. `bridged`: sound, shorted to ground while pressed. `shorted`: shorted to ground.
 * `altered`: there, but reading something else (a damaged input, a leak, a wrong value).
 */
export const faultModes = ['broken', 'loose', 'cracked', 'bridged', 'shorted', 'altered'] as const;
export type FaultMode = (typeof faultModes)[number];

/** What a place adds to its line: nothing, a short to ground, or a reading that is not the line's own. */
export type Load = 'none' | 'short' | 'altered';

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
  altered: { open: false, load: 'altered' },
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
