// A probe as evidence, with what it found.
import type { PressFinding } from '../../src/core/press/decide-press.js';
import type { Observation } from '../../src/core/suspects/evidence.js';
import { lookOf, type Probe } from '../../src/core/suspects/probes.js';
import type { Verdict } from '../../src/core/verdict.js';

/** @param found a verdict of a touch, or the finding of a press test. */
export const observedBy = (probe: Probe, found: string): Observation => {
  const look = lookOf(probe);
  if (look.kind === 'press') return { ...look, finding: found as PressFinding };
  const clipMoved = probe.probe === 'other-ground' ? { clipMoved: true } : {};
  return { ...look, verdict: found as Verdict, ...clipMoved };
};
