// The last seconds of readings, each placed between the limits of the line it belonged to when it came: a
// touch that settles inside its limits looks the same on every line. Pure; keeps no more than it may show.

import { isOverload, isValue, type Reading } from '../reading.js';
import type { ExpectedBounds, Verdict } from '../verdict.js';
import { readTouch } from '../walk/read-touch.js';
import type { WalkState } from '../walk/state.js';
import { contactFloor } from '../walk/usable.js';
import { pressBounds } from './press.js';
import { placeFromLevel, placeOf } from './scale.js';
import { expectedAt, selectSubject } from './subject.js';

export interface TracePoint {
  readonly t: number;
  /** 0 to 1 between the axis' ends, or null for overload. */
  readonly at: number | null;
  /** Captured: the probe rests. */
  readonly still: boolean;
}

export interface TraceMark {
  readonly t: number;
  readonly pin: string;
  readonly verdict: Verdict;
}

export interface Trace {
  readonly points: readonly TracePoint[];
  readonly marks: readonly TraceMark[];
  readonly reading: Reading | null;
}

export const emptyTrace: Trace = { points: [], marks: [], reading: null };

export const traceWindowS = 20;
/** At 50 readings/s the window holds 1000; a burst from a file may bring more. */
const mostPoints = 2000;

/** Takes in the state's latest reading, if it is a new one that can be drawn. */
export const addReading = (trace: Trace, state: WalkState): Trace => {
  const { reading } = state;
  if (reading === null || reading === trace.reading) return trace;
  if (!isValue(reading) && !isOverload(reading)) return { ...trace, reading };
  const oldest = reading.t - traceWindowS;
  const kept = trace.points.filter(({ t }) => t >= oldest).slice(1 - mostPoints);
  const point = {
    t: reading.t,
    at: isValue(reading) ? placeNow(state, reading.value) : null,
    still: isValue(reading) && isStill(state, reading.value),
  };
  return {
    reading,
    points: [...kept, point],
    marks: trace.marks.filter(({ t }) => t >= oldest),
  };
};

/** Marks the moment at which a pin was judged. */
export const addMark = (trace: Trace, mark: TraceMark): Trace => ({
  ...trace,
  marks: [...trace.marks.filter(({ t, pin }) => t !== mark.t || pin !== mark.pin), mark],
});

/** A reading this far from the level it should rest on is the probe leaving, whatever comes of it. */
const stillWithin = 0.05;

const isStill = ({ contact, plan }: WalkState, value: number): boolean => {
  const { rest } = contact;
  if (rest === null) return false;
  const reach = Math.max(stillWithin * Math.abs(rest.level), 3 * contactFloor(plan.function));
  return Math.abs(value - rest.level) <= reach;
};

const placeNow = (state: WalkState, value: number): number => {
  const { rest } = state.contact;
  const place = placeOf(value, expectedNow(state));
  if (place !== null) return place.at;
  if (rest !== null) return placeFromLevel(value, rest.level);
  const touch = readTouch(state);
  return placeFromLevel(value, 'level' in touch ? touch.level : value);
};

/**
 * The limits the reading is shown between: those of a ground in the ground check and while the probe still rests
 * on that ground, none while it rests on something whose pin is in doubt.
 */
const expectedNow = (state: WalkState): ExpectedBounds => {
  const { rest } = state.contact;
  if (state.press !== null) return pressBounds(state, state.press);
  const subject = selectSubject(state);
  if (state.stage === 'ground-check') return groundBounds(state);
  if (rest !== null && subject?.judged !== true) {
    const ground = groundBounds(state);
    return placeOf(rest.level, ground)?.beyond === null ? ground : null;
  }
  return subject === null ? null : expectedAt(state, subject);
};

const groundBounds = ({ plan }: WalkState): ExpectedBounds =>
  plan.pins.find(({ kind }) => kind === 'ground')?.expected ?? null;
