// A technician alone on a stage: a scripted program speaks, every contact is noted, time runs in small steps.
import { type Body, createBody, type Gesture, type Reach } from '../../../src/bench/body.js';
import type { Pace } from '../../../src/bench/pace.js';
import { seeded } from '../../../src/bench/seeded.js';
import type { Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Act } from '../../../src/core/inputs.js';
import { shippedProfile } from './profile-files.js';

export interface Contact {
  readonly pin: string;
  readonly fromS: number;
  readonly toS: number;
}

/** What the scripted program sees of the hands, once every hundredth of a second. */
export interface Sight {
  readonly nowS: number;
  readonly pin: string | null;
  /** Seconds the probe has been where it is. */
  readonly forS: number;
}

export interface Rehearsal {
  readonly contacts: readonly Contact[];
  readonly acts: readonly Act[];
  readonly discharged: readonly string[];
  readonly resets: number;
}

export interface Stage {
  readonly work: (body: Body) => Gesture<void>;
  readonly pace: Pace;
  readonly seconds: number;
  readonly seed?: number;
  readonly readingsPerS?: number;
  /** Where the display shows a number. */
  readonly shows?: (pin: string) => boolean;
  readonly program?: (see: Sight, say: (event: WalkEvent) => void) => void;
}

export const rehearse = (stage: Stage): Rehearsal => {
  const { seconds, shows = () => true, program = () => undefined } = stage;
  const profile = shippedProfile('demo');
  const nameOf = (place: number | null) =>
    place === null ? null : (profile.connector.pins[place]?.pin ?? null);
  const acts: Act[] = [];
  const discharged: string[] = [];
  const contacts: Contact[] = [];
  let resets = 0;
  let seq = 0;
  const reach: Reach = {
    showsValue: () => {
      const pin = nameOf(running.body.probing.pinIndex);
      return pin !== null && shows(pin);
    },
    discharge: (place) => discharged.push(nameOf(place) ?? ''),
    resetMeter: () => {
      resets += 1;
    },
    act: (act) => acts.push(act),
  };
  const running = createBody(
    {
      profile,
      pace: stage.pace,
      random: seeded(stage.seed ?? 1, 'technician'),
      readingsPerS: stage.readingsPerS ?? 20,
      pads: [],
      doubts: [],
      reach,
    },
    stage.work,
  );
  let pin: string | null = null;
  let sinceS = 0;
  for (let step = 1; step <= seconds * 1000; step += 1) {
    const nowS = step / 1000;
    running.advanceTo(nowS);
    const now = nameOf(running.body.probing.pinIndex);
    if (now !== pin) {
      if (pin !== null) contacts.push({ pin, fromS: sinceS, toS: nowS });
      pin = now;
      sinceS = nowS;
    }
    if (step % 10 !== 0) continue;
    program({ nowS, pin, forS: nowS - sinceS }, (event) => {
      const numbered: Numbered = { seq, ...event };
      seq += 1;
      running.hear(numbered);
    });
  }
  if (pin !== null) contacts.push({ pin, fromS: sinceS, toS: seconds });
  return { contacts, acts, discharged, resets };
};

export const judged = (pin: string, t: number, agreed = true): WalkEvent => ({
  type: 'pin-judged',
  t,
  pin,
  line: 'L',
  verdict: agreed ? 'normal' : 'high',
  confidence: 1,
  expected: null,
  agreed,
});
