// The probe that would tell most, with the key that does it at once.
import type { WalkState } from '../../core/walk/state.js';
import type { Surroundings } from '../context.js';
import { shownKey } from '../keys/key-map.js';
import { type Line, span } from './line.js';

/** No line where no probe is worth its effort, or one is under way. */
export const nextProbeLines = (
  { ranked, probing, press }: WalkState,
  { words, keys, theme }: Surroundings,
): readonly Line[] => {
  if (ranked?.next == null || probing !== null || press !== null) return [];
  const key = shownKey(keys, 'probe') ?? words.screen.key.probe;
  return [
    [
      span(` ${key}`, theme.style.accent),
      span(`  ${words.nextProbe(ranked.next)}`, theme.style.text),
    ],
  ];
};
