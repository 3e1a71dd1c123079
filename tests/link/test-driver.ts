// What the link tests need of a driver: a way of talking and a wire.
import type { LinkDriver } from '../../src/link/line-cutter.js';

export const linkDriver = (
  style: LinkDriver['talk']['style'],
  wire: Partial<LinkDriver['wire']> = {},
): LinkDriver => ({
  talk: { style },
  wire: {
    encoding: 'latin1',
    maxFrame: 40,
    sendEnd: '\n',
    serial: { baud: 9600, dataBits: 8, parity: 'none', stopBits: 1, dtr: true, rts: false },
    ...wire,
  },
});
