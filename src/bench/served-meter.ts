// One virtual meter at the end of a wire: bytes in, bytes out, while somebody is connected. Nobody connected:
// its world stands still, probe and all, so that a walk goes on where the connection was lost.
import type { Numbered } from '../core/events.js';
import { bytesOf, textOf } from '../core/meter/wire-text.js';
import type { Clock } from '../session/ports.js';
import { createPump } from './pump.js';
import { isDrop } from './trouble.js';
import { createVirtualMeter, type VirtualMeterSetup } from './virtual-meter.js';

export interface ServedMeter {
  attach(): void;
  detach(): void;
  receive(bytes: Uint8Array): void;
  /** Lets the technician hear what the walk says. */
  hear(event: Numbered): void;
}

export interface Wire {
  send(bytes: Uint8Array): void;
  /** The lead is pulled for so long. */
  drop(forS: number): void;
}

export const createServedMeter = (
  setup: VirtualMeterSetup,
  clock: Clock,
  wire: Wire,
): ServedMeter => {
  const { encoding } = setup.driver.wire;
  const meter = createVirtualMeter(setup);
  const pump = createPump(clock, meter, (line) => wire.send(bytesOf(`${line}\r\n`, encoding)));
  const drops = setup.troubles.filter(isDrop).sort((a, b) => a.atS - b.atS);
  let cancelDrop = (): void => undefined;

  return {
    attach: () => {
      meter.reconnect();
      pump.start();
      const [next] = drops;
      if (next === undefined) return;
      cancelDrop = clock.after(Math.max(0, next.atS - meter.nowS), () => {
        drops.shift();
        wire.drop(next.forS);
      });
    },
    detach: () => {
      cancelDrop();
      pump.pause();
    },
    receive: (bytes) => pump.receive(textOf(bytes, encoding)),
    hear: (event) => meter.hear(event),
  };
};
