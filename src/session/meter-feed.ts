// A meter as a source of inputs: joins a link, the dialogue with the meter and the clock. Everything that
// happens to the link or to the meter becomes an input; nothing is judged here.

import type { Input, LinkChange } from '../core/inputs.js';
import {
  type DialogueEffect,
  type DialogueEvent,
  startDialogue,
  stepDialogue,
  type Wanted,
} from '../core/meter/dialogue/dialogue.js';
import type { Driver } from '../core/meter/driver-format.js';
import type { Clock, Feed, Link } from './ports.js';

export interface MeterFeedOptions {
  readonly link: Link;
  readonly driver: Driver;
  readonly wanted: Wanted;
  readonly clock: Clock;
}

/** @throws DialogueError when the driver cannot measure what is wanted. */
export const createMeterFeed = ({ link, driver, wanted, clock }: MeterFeedOptions): Feed => {
  let dialogue = startDialogue(driver, wanted);
  let cancelWake = (): void => undefined;
  let silent = false;
  let stopped = false;
  let take: (input: Input) => void = () => undefined;

  const tell = (t: number, change: LinkChange, detail?: string): void =>
    take({ kind: 'link', t, change, ...(detail === undefined ? {} : { detail }) });

  /** One event is carried out whole before the next: a link may answer within `send`. */
  const pending: DialogueEvent[] = [];
  let stepping = false;
  const step = (event: DialogueEvent): void => {
    pending.push(event);
    if (stepping) return;
    stepping = true;
    try {
      for (let next = pending.shift(); next && !stopped; next = pending.shift()) {
        const { state, effects } = stepDialogue(dialogue, next);
        dialogue = state;
        for (const effect of effects) if (!stopped) carryOut(effect);
      }
    } finally {
      stepping = false;
    }
  };

  const carryOut = (effect: DialogueEffect): void => {
    switch (effect.effect) {
      case 'send':
        link.send(effect.text);
        return;
      case 'wake':
        cancelWake();
        cancelWake = clock.after(Math.max(0, effect.t - clock.now()), () =>
          step({ event: 'wake', t: clock.now() }),
        );
        return;
      case 'reading':
        if (silent) tell(effect.reading.t, 'returned', 'the meter answers again');
        silent = false;
        take({ kind: 'reading', reading: effect.reading });
        return;
      case 'says':
        take({ kind: 'meter', t: effect.t, says: effect.says, text: effect.text });
        if (effect.says !== 'no-answer') return;
        silent = true;
        tell(effect.t, 'silent', effect.text);
    }
  };

  const down = (t: number): void => {
    cancelWake();
    silent = false;
    step({ event: 'lost', t });
  };

  return {
    title: `${driver.title} on ${link.title}`,
    start: (takes) => {
      take = (input) => {
        if (!stopped) takes(input);
      };
      link.open({
        opened: (t, again) => {
          tell(t, again ? 'returned' : 'opened', link.title);
          step({ event: 'opened', t });
        },
        frame: (t, frame, together) => step({ event: 'frame', t, frame, together }),
        lost: (t, reason) => {
          down(t);
          tell(t, 'lost', reason);
        },
        failed: (t, reason) => {
          down(t);
          tell(t, 'failed', reason);
        },
        ended: (t) => {
          down(t);
          tell(t, 'ended');
        },
      });
    },
    stop: async () => {
      stopped = true;
      cancelWake();
      await link.close();
    },
  };
};
