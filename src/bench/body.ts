// The simulated technician's body: two hands, an ear, a watch and a temper of chance. Gestures are generators
// that yield what they wait for; `createBody` runs one of them along the time passed in. Holds no clock.
import type { Numbered } from '../core/events.js';
import type { Act } from '../core/inputs.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { Probing } from './board.js';
import { checkPace, type Pace } from './pace.js';
import type { BenchPad } from './pads.js';
import type { Seeded } from './seeded.js';

/** Until when to wait; with `ear`, only until something is heard. */
export interface Wait {
  readonly untilS: number;
  readonly ear: boolean;
}

export type Gesture<T> = Generator<Wait, T, void>;

/** What the hands can reach beside the probe. */
export interface Reach {
  /** Does the meter's display show a number just now? */
  showsValue(): boolean;
  discharge(pinIndex: number): void;
  /** Sets the meter's buttons and dial right again. */
  resetMeter(): void;
  /** Presses a key of the program; absent where only probes reach it. */
  readonly act?: (act: Act) => void;
}

export interface BodySetup {
  readonly profile: Profile;
  readonly pace: Pace;
  readonly random: Seeded;
  readonly reach: Reach;
  /** How often the meter reads: slow meters need longer touches. */
  readonly readingsPerS: number;
  /** The reply pads at hand, in the order of their places after the last pin. */
  readonly pads: readonly BenchPad[];
  /** Lines that this technician has press-tested though they read well: a pad asks for it. */
  readonly doubts: readonly string[];
}

export interface Body extends BodySetup {
  readonly nowS: number;
  readonly inbox: Numbered[];
  probing: Probing;
  /** The place the probe was taken to last. */
  over: number | null;
  /** When contact will slip, seconds of the world, or null. */
  slipAtS: number | null;
  /** Places of ground pins that have read as ground. */
  goodGrounds: readonly number[];
}

export interface RunningBody {
  readonly body: Body;
  /** Lets time pass; gestures act at their exact moments. */
  advanceTo(worldS: number): void;
  /** The next moment at which the hands may move, if nothing is heard. */
  nextS(): number;
  hear(event: Numbered): void;
}

/** @throws RangeError when the pace is impossible. */
export const createBody = (setup: BodySetup, work: (body: Body) => Gesture<void>): RunningBody => {
  checkPace(setup.pace);
  const body: Body & { nowS: number } = {
    ...setup,
    nowS: 0,
    inbox: [],
    probing: { pinIndex: null, pressed: null },
    over: null,
    slipAtS: null,
    goodGrounds: [],
  };
  const gesture = work(body);
  let wait: Wait | null = { untilS: 0, ear: false };
  const dueS = (): number => {
    if (wait === null) return Number.POSITIVE_INFINITY;
    return wait.ear && body.inbox.length > 0 ? body.nowS : wait.untilS;
  };
  return {
    body,
    nextS: dueS,
    hear: (event) => {
      // The display's every reading is seen, not heard.
      if (event.type !== 'reading-taken') body.inbox.push(event);
    },
    advanceTo: (worldS) => {
      for (let due = dueS(); due <= worldS; due = dueS()) {
        body.nowS = Math.max(body.nowS, due);
        const step = gesture.next();
        wait = step.done === true ? null : step.value;
      }
      body.nowS = Math.max(body.nowS, worldS);
    },
  };
};

export function* pass(body: Body, seconds: number): Gesture<void> {
  yield { untilS: body.nowS + seconds, ear: false };
}

/** The next thing heard, or null at `untilS`. */
export function* listen(body: Body, untilS: number): Gesture<Numbered | null> {
  if (body.inbox.length === 0) yield { untilS, ear: true };
  return body.inbox.shift() ?? null;
}
