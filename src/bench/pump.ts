// Runs a virtual meter along a clock: wakes it when it is due and hands on what it says. When the process was
// asleep or busy for long, the meter's world stood still meanwhile instead of rushing to catch up.
import type { Clock } from '../session/ports.js';
import type { VirtualMeter } from './virtual-meter.js';

export interface Pump {
  /** Text from the program. */
  receive(text: string): void;
  /** Stops the meter's world until `start`. */
  pause(): void;
  start(): void;
}

/** A delay over this is a standstill of the process, seconds. */
const standstillS = 1;

export const createPump = (
  clock: Clock,
  meter: VirtualMeter,
  say: (line: string) => void,
): Pump => {
  /** Clock time of the meter's world at 0. */
  let originT = clock.now();
  let cancel: (() => void) | null = null;
  let running = false;

  const wait = (): void => {
    cancel?.();
    cancel = null;
    const due = meter.nextS();
    if (running && Number.isFinite(due))
      cancel = clock.after(Math.max(0, originT + due - clock.now()), () => work(due));
  };

  const work = (due: number): void => {
    const lateS = clock.now() - (originT + due);
    if (lateS > standstillS) originT += lateS;
    for (const line of meter.advanceTo(due)) if (running) say(line);
    wait();
  };

  return {
    start: () => {
      if (running) return;
      running = true;
      originT = clock.now() - meter.nowS;
      wait();
    },
    pause: () => {
      running = false;
      cancel?.();
      cancel = null;
    },
    receive: (text) => {
      if (!running) return;
      const nowS = clock.now() - originT;
      const reachableS = Math.min(nowS, meter.nextS());
      for (const line of meter.advanceTo(Math.max(meter.nowS, reachableS))) say(line);
      meter.receive(text);
      wait();
    },
  };
};
