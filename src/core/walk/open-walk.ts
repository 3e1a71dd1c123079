// The walk's state as a session begins: what its first line says, and nothing read yet.
import { estimateShift, noShifts } from '../context/estimate-shift.js';
import type { EventOf } from '../events.js';
import { partsToPress } from '../press/press-stage.js';
import { planWalk } from '../profile/plan.js';
import { noContact } from './contact.js';
import { unknownNoise } from './noise.js';
import { openEar } from './pad-ear.js';
import { openAlone } from './press-alone.js';
import { noDelay } from './ranging.js';
import type { PinRecord, WalkState } from './state.js';
import { startAt } from './ways.js';

export const unreadPin: PinRecord = {
  verdict: 'unread',
  confidence: 1,
  expected: null,
  agreed: false,
  value: null,
  overload: false,
  standardUncertainty: null,
  touch: null,
};

export const openWalk = (opened: EventOf<'session-opened'>): WalkState => {
  const plan = planWalk(opened.profile.content, opened.measure, opened.pins, opened.donor);
  const pins = plan.pins.map(({ expected }) => ({ ...unreadPin, expected }));
  return {
    profile: opened.profile.content,
    plan,
    accuracy: opened.accuracy,
    groundCheck: opened.groundCheck,
    stage: opened.groundCheck && opened.pressAlone === undefined ? 'ground-check' : 'walking',
    ready: null,
    readyNext: opened.ready ?? [],
    reference: opened.reference ?? null,
    leads: null,
    t: opened.t,
    reading: null,
    contact: noContact,
    noise: unknownNoise,
    ranging: noDelay,
    shifts: estimateShift(pins, plan, opened.recheck?.shifts),
    shiftsTold: noShifts,
    trustedStep: 0,
    alignment: startAt(0),
    latest: null,
    cursor: Math.max(
      0,
      plan.pins.findIndex(({ pin }) => pin === opened.pressAlone?.pin),
    ),
    reachedT: opened.t,
    pins,
    pending: [],
    named: [],
    nextTouch: 0,
    question: null,
    calls: { unfollowed: 0, pin: '', times: 0, doubts: 0 },
    hushed: false,
    hold: null,
    paused: null,
    grounds: 0,
    groundRepeated: false,
    negatives: 0,
    opensInARow: 0,
    link: null,
    pads: openEar(opened),
    seed: opened.seed ?? 0,
    press: null,
    lastPress: null,
    presses: [],
    pressTests: 0,
    alone: openAlone(opened.pressAlone),
    pressEach: opened.pressTests === 'each',
    pressDue: [],
    recheck: opened.recheck ?? null,
    recheckOutcome: null,
    probing: null,
    evidence: [],
    ranked: null,
    accused: null,
    partsOf: new Map(plan.pins.map(({ line }) => [line, pressedAgain(opened, line)])),
  };
};

/** In a recheck the places that answered before, else every part along the line. */
const pressedAgain = (
  { recheck, profile }: EventOf<'session-opened'>,
  line: string,
): readonly string[] => {
  const before = (recheck?.press ?? []).filter((place) => place.line === line);
  const parts = before.flatMap(({ part }) => part ?? []);
  return parts.length > 0 ? parts : partsToPress(profile.content, line);
};
