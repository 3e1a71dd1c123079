// The virtual bench as a link in the same process: a meter on a simulated board, and a technician who hears
// the program. Everything it delivers is simulated, and its title says so.
import { createFramer, type Framer } from '../core/framing.js';
import { bytesOf } from '../core/meter/wire-text.js';
import type { Clock, Follower, Link, LinkListener } from '../session/ports.js';
import { createPump } from './pump.js';
import { isDrop } from './trouble.js';
import { createVirtualMeter, type VirtualMeterSetup } from './virtual-meter.js';

export interface VirtualLink extends Link {
  /** Lets the technician hear what the walk says. */
  readonly hear: Follower;
  /** Presses on a part of the board, or lets go. */
  pressPart(part: string | null): void;
  /** The truth: the pin under the probe when the last frame at or before `t` was made, or null. */
  pinAt(t: number): string | null;
}

/**
 * Opens after no time at all. Every wait goes by `clock`, so that a test can run a walk in a moment.
 * @throws RangeError or TypeError when the parts of the set-up do not go together.
 */
export const createVirtualLink = (
  title: string,
  setup: VirtualMeterSetup,
  clock: Clock,
): VirtualLink => {
  const { driver, troubles } = setup;
  const meter = createVirtualMeter(setup);
  const truth: { readonly t: number; readonly pin: string | null }[] = [];
  const timers = new Set<() => void>();
  let listener: LinkListener | null = null;
  let framer: Framer | null = null;

  const say = (line: string): void => {
    const t = clock.now();
    truth.push({ t, pin: meter.touchedPin() });
    for (const frame of framer?.push(bytesOf(`${line}\r\n`, driver.wire.encoding)) ?? [])
      listener?.frame(t, frame);
  };
  const pump = createPump(clock, meter, say);

  const after = (seconds: number, call: () => void): void => {
    const cancel = clock.after(seconds, () => {
      timers.delete(cancel);
      call();
    });
    timers.add(cancel);
  };

  const come = (again: boolean): void => {
    const { maxFrame, encoding } = driver.wire;
    framer = createFramer({ maxFrame, encoding, dropFirstPartial: false });
    meter.reconnect();
    pump.start();
    listener?.opened(clock.now(), again);
  };

  const go = (forS: number): void => {
    framer = null;
    listener?.lost(clock.now(), 'the simulated lead was pulled');
    after(forS, () => come(true));
  };

  return {
    title: `${title} (simulated)`,
    open: (hears) => {
      if (listener !== null) throw new Error('the virtual bench was opened twice');
      listener = hears;
      after(0, () => come(false));
      for (const drop of troubles.filter(isDrop)) after(drop.atS, () => go(drop.forS));
    },
    send: (text) => {
      if (framer !== null) pump.receive(text);
    },
    close: async () => {
      listener = null;
      pump.pause();
      for (const cancel of timers) cancel();
    },
    hear: (event) => meter.hear(event),
    pressPart: (part) => meter.pressPart(part),
    pinAt: (t) => truth.findLast((at) => at.t <= t)?.pin ?? null,
  };
};
