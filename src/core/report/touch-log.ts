// Every touch that was captured and named, under the pin it belongs to in the end: a later realignment moves it.
import type { Numbered } from '../events.js';
import type { Verdict } from '../verdict.js';

export interface Touch {
  readonly touch: number;
  readonly pin: string;
  readonly t: number;
  readonly value: number | null;
  readonly overload: boolean;
  readonly standardUncertainty: number | null;
  readonly readings: number;
  /** Full scale, where the meter told it. */
  readonly range: number | null;
  /** What was judged from it. */
  readonly verdict: Verdict | null;
}

export interface TouchLog {
  take(event: Numbered): void;
  /** By pin, in the order in which they came. */
  readonly byPin: ReadonlyMap<string, readonly Touch[]>;
}

export const createTouchLog = (): TouchLog => {
  const byPin = new Map<string, Touch[]>();
  const pinOf = new Map<number, string>();
  const touchesOf = (pin: string): Touch[] => {
    const touches = byPin.get(pin) ?? [];
    byPin.set(pin, touches);
    return touches;
  };
  const forget = (touch: number): void => {
    const pin = pinOf.get(touch);
    if (pin === undefined) return;
    byPin.set(
      pin,
      touchesOf(pin).filter((known) => known.touch !== touch),
    );
  };
  return {
    byPin,
    take(event) {
      if (event.type === 'pin-settled') {
        const { touch, pin, t, standardUncertainty, readings } = event;
        forget(touch);
        pinOf.set(touch, pin);
        touchesOf(pin).push({
          touch,
          pin,
          t,
          value: event.value ?? null,
          overload: event.overload ?? false,
          standardUncertainty,
          readings,
          range: event.range ?? null,
          verdict: null,
        });
      } else if (event.type === 'pin-judged' && event.verdict !== 'unread' && !event.anew) {
        const touches = touchesOf(event.pin);
        const last = touches.pop();
        if (last !== undefined) touches.push({ ...last, verdict: event.verdict });
      }
    },
  };
};
