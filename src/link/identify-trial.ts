// Tries a driver on a meter that has told its name: sets it up and takes one reading, exactly as a walk would.
import { createFramer } from '../core/framing.js';
import {
  type DialogueEvent,
  type DialogueState,
  startDialogue,
  stepDialogue,
} from '../core/meter/dialogue/dialogue.js';
import type { Driver } from '../core/meter/driver-format.js';
import { bytesOf } from '../core/meter/wire-text.js';
import { isFault, type MeasureFunction } from '../core/reading.js';
import type { Clock } from '../session/ports.js';
import type { Probe } from './identify-probe.js';

export interface Trial {
  readonly read: boolean;
  /** What the meter complained of. */
  readonly errors: readonly string[];
}

/** Every driver states the accuracy of at least one function. */
const firstFunction = ({ accuracy }: Driver): MeasureFunction =>
  accuracy[0]?.function ?? 'resistance';

export const tryDriver = (
  probe: Probe,
  driver: Driver,
  clock: Clock,
  withinS: number,
): Promise<Trial> =>
  new Promise((resolve) => {
    const { maxFrame, encoding } = driver.wire;
    const framer = createFramer({ maxFrame, encoding, dropFirstPartial: false });
    const errors: string[] = [];
    let state: DialogueState = startDialogue(driver, { function: firstFunction(driver) });
    let cancelWake = (): void => undefined;
    let over = false;

    const finish = (read: boolean): void => {
      if (over) return;
      over = true;
      cancelWake();
      cancelEnd();
      unfollow();
      resolve({ read, errors });
    };
    const step = (event: DialogueEvent): void => {
      if (over) return;
      const stepped = stepDialogue(state, event);
      state = stepped.state;
      for (const effect of stepped.effects) {
        if (effect.effect === 'send') probe.send(bytesOf(effect.text, encoding));
        else if (effect.effect === 'reading' && !isFault(effect.reading)) finish(true);
        else if (effect.effect === 'says' && effect.says === 'error') errors.push(effect.text);
        else if (effect.effect === 'wake' && !over) {
          cancelWake();
          const inS = Math.max(0, effect.t - clock.now());
          cancelWake = clock.after(inS, () => step({ event: 'wake', t: clock.now() }));
        }
      }
    };
    const cancelEnd = clock.after(withinS, () => finish(false));
    const unfollow = probe.follow((chunk) => {
      for (const frame of framer.push(chunk)) step({ event: 'frame', t: clock.now(), frame });
    });
    step({ event: 'opened', t: clock.now() });
  });
