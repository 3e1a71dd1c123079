// A cycle is one press and the release after it. Pairs the windows of a test, and lets only values that agree
// between presses count.
import { median } from '../numbers/median.js';
import type { CueWindow } from './cue-window.js';
import { mostCycles } from './press-design.js';

export interface PressCycle {
  readonly press: CueWindow;
  readonly release: CueWindow;
  /** False where the record ended with the press and the time before the first press stands in. */
  readonly releaseSeen: boolean;
}

/**
 * Pairs each press with the release after it, up to the eighth. A record that ends as the last press does has
 * one release too few: what the line showed before the first press then stands in for it, so that the table
 * keeps as many windows of each kind.
 * @param rest the window before the first press; null where nothing was read then.
 */
export const cyclesOf = (windows: readonly CueWindow[], rest: CueWindow | null): PressCycle[] => {
  const cycles: PressCycle[] = [];
  for (let i = 0; i < windows.length && cycles.length < mostCycles; i += 2) {
    const press = windows[i] as CueWindow;
    const release = windows[i + 1];
    if (release !== undefined) cycles.push({ press, release, releaseSeen: true });
    else if (rest !== null) cycles.push({ press, release: rest, releaseSeen: false });
  }
  return cycles;
};

/** Contact through one joint repeats within this share of the value. Common practice, no source. */
const agreementShare = 0.05;

/**
 * Makes unclear every window at the line's normal whose value lies apart from their common median: another
 * pin was touched, or the joint reads something new each time.
 * @param floor difference that means nothing, in the function's unit.
 */
export const agreeing = (cycles: readonly PressCycle[], floor: number): PressCycle[] => {
  const values = cycles.flatMap(({ press, release }) =>
    [press, release].flatMap(({ side, value }) =>
      side === 'normal' && value !== null ? [value] : [],
    ),
  );
  if (values.length === 0) return [...cycles];
  const common = median(values);
  const most = agreementShare * Math.abs(common) + floor;
  const agreed = (window: CueWindow): CueWindow =>
    window.side === 'normal' && window.value !== null && Math.abs(window.value - common) > most
      ? { ...window, side: null, locked: false }
      : window;
  return cycles.map((cycle) => ({
    ...cycle,
    press: agreed(cycle.press),
    release: agreed(cycle.release),
  }));
};
