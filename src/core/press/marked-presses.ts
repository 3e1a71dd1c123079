// Presses the technician marked with a key or pedal, held against the times between them.
import type { ActName } from '../inputs.js';
import { fishersExactTest } from '../numbers/fishers-exact-test.js';
import type { Segment } from './two-states.js';

export interface MarkedSpan {
  readonly pressed: boolean;
  readonly fromS: number;
  readonly toS: number;
}

export interface MarkedPresses {
  readonly presses: number;
  /** Presses, and times between, in which the line was mostly away from its rest. */
  readonly awayPressed: number;
  readonly awayBetween: number;
  /** Fisher's one-sided p-value, raw. Presses at will have no jitter of ours: a rhythm could imitate them. */
  readonly pValue: number;
}

/** The spans from each `pressing` to its `released`, and from there to the next; a second one is a reminder. */
export const markedSpans = (
  acts: readonly { readonly t: number; readonly act: ActName }[],
  endS: number,
): MarkedSpan[] => {
  const spans: MarkedSpan[] = [];
  let open: { pressed: boolean; fromS: number } | null = null;
  for (const { t, act } of acts) {
    if (act !== 'pressing' && act !== 'released') continue;
    const pressed = act === 'pressing';
    if (open === null ? !pressed : open.pressed === pressed) continue;
    if (open !== null) spans.push({ ...open, toS: t });
    open = { pressed, fromS: t };
  }
  if (open !== null && endS > open.fromS) spans.push({ ...open, toS: endS });
  return spans;
};

/** Null without a marked press. */
export const comparePresses = (
  spans: readonly MarkedSpan[],
  segments: readonly Segment[],
  rests: 'contact' | 'none',
): MarkedPresses | null => {
  const isAway = (span: MarkedSpan): boolean =>
    2 * awaySeconds(span, segments, rests) > span.toS - span.fromS;
  const pressed = spans.filter((span) => span.pressed);
  const between = spans.filter((span) => !span.pressed);
  if (pressed.length === 0) return null;
  const awayPressed = pressed.filter(isAway).length;
  const awayBetween = between.filter(isAway).length;
  const pValue = fishersExactTest(
    [
      [awayPressed, pressed.length - awayPressed],
      [awayBetween, between.length - awayBetween],
    ],
    'greater',
  );
  return { presses: pressed.length, awayPressed, awayBetween, pValue };
};

/** Seconds of the span in which the line is away; a state lasts until the next one begins. */
const awaySeconds = (
  { fromS, toS }: MarkedSpan,
  segments: readonly Segment[],
  rests: 'contact' | 'none',
): number =>
  segments.reduce((sum, segment, i) => {
    if (segment.contact === (rests === 'contact')) return sum;
    const until = segments[i + 1]?.fromS ?? segment.toS;
    return sum + Math.max(0, Math.min(toS, until) - Math.max(fromS, segment.fromS));
  }, 0);
