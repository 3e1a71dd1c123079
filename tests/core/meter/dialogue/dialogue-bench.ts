// Plays a dialogue against a pretended meter in pretended time. Wakes and answers happen in order of time;
// nothing waits in reality.
import {
  type DialogueEffect,
  startDialogue,
  stepDialogue,
  type Wanted,
} from '../../../../src/core/meter/dialogue/dialogue.js';
import type { Driver } from '../../../../src/core/meter/driver-format.js';

/**
 * What the meter answers to one sent text: lines, each `after` seconds, perhaps in one piece with the one before,
 * perhaps only if it is `still` so by then.
 */
export type Meter = (
  sent: string,
  t: number,
) => readonly { after: number; line: string; together?: boolean; still?: () => boolean }[];

export interface Played {
  readonly sent: readonly { t: number; text: string }[];
  readonly readings: readonly (number | string)[];
  /** How many texts had been sent when each reading was heard. */
  readonly sentBefore: readonly number[];
  readonly heardAt: readonly number[];
  readonly says: readonly { t: number; says: string; text: string }[];
}

type Due = { t: number; happen: () => void };

export const play = (driver: Driver, wanted: Wanted, meter: Meter, untilS: number) => {
  const sent: { t: number; text: string }[] = [];
  const readings: (number | string)[] = [];
  const sentBefore: number[] = [];
  const heardAt: number[] = [];
  const says: { t: number; says: string; text: string }[] = [];
  let state = startDialogue(driver, wanted);
  const due: Due[] = [];
  let wake: number | undefined;

  const step = (event: Parameters<typeof stepDialogue>[1]): void => {
    const next = stepDialogue(state, event);
    state = next.state;
    for (const effect of next.effects) carryOut(effect, event.t);
  };
  const later = (t: number, happen: () => void): void => {
    let place = due.length;
    while (place > 0 && (due[place - 1]?.t ?? 0) > t) place -= 1;
    due.splice(place, 0, { t, happen });
  };
  const carryOut = (effect: DialogueEffect, t: number): void => {
    if (effect.effect === 'wake') wake = effect.t;
    else if (effect.effect === 'says') says.push({ t, says: effect.says, text: effect.text });
    else if (effect.effect === 'send') {
      sent.push({ t, text: effect.text });
      for (const { after, line, together, still } of meter(effect.text.trim(), t)) {
        const frame = { text: line };
        later(t + after, () => {
          if (still?.() !== false) step({ event: 'frame', t: t + after, frame, together });
        });
      }
    } else {
      const { reading } = effect;
      sentBefore.push(sent.length);
      heardAt.push(t);
      readings.push(
        'value' in reading
          ? reading.value
          : 'overload' in reading
            ? 'OL'
            : 'fault' in reading
              ? reading.fault
              : 'blank',
      );
    }
  };

  const at = (t: number, event: 'opened' | 'lost'): void => later(t, () => step({ event, t }));
  const line = (t: number, text: string): void =>
    later(t, () => step({ event: 'frame', t, frame: { text } }));
  const run = (until: number): Played => {
    for (let turns = 0; turns < 100_000; turns += 1) {
      const first = due[0];
      const wakeFirst = wake !== undefined && (first === undefined || wake <= first.t);
      const t = wakeFirst ? (wake ?? 0) : (first?.t ?? Number.POSITIVE_INFINITY);
      if (t > until) return { sent, readings, sentBefore, heardAt, says };
      if (wakeFirst) {
        wake = undefined;
        step({ event: 'wake', t });
      } else {
        due.shift()?.happen();
      }
    }
    throw new Error('the dialogue never rests');
  };
  return { at, line, run: () => run(untilS) };
};
