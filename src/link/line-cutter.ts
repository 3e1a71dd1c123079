// Where listening begins: a meter that talks by itself is heard from its first whole line on; a meter that
// answers is heard from the first question on. Either way half a line is never taken for a whole one.
import { createFramer, type Frame } from '../core/framing.js';
import type { Driver } from '../core/meter/driver-format.js';

/** What a link needs to know of a driver. */
export type LinkDriver = Pick<Driver, 'wire'> & { readonly talk: Pick<Driver['talk'], 'style'> };

export interface LineCutter {
  push(bytes: Uint8Array): Frame[];
  /** Something was asked: unless the meter talks by itself, what is pending cannot be the answer. */
  asked(): void;
}

/** Make a new one at every opening of a link. */
export const createLineCutter = ({ wire, talk }: LinkDriver): LineCutter => {
  const { maxFrame, encoding } = wire;
  const blocks = talk.style === 'scpi';
  let framer = createFramer({ maxFrame, encoding, blocks, dropFirstPartial: true });
  let waiting = talk.style !== 'stream';
  return {
    push: (bytes) => framer.push(bytes),
    asked: () => {
      if (!waiting) return;
      waiting = false;
      framer = createFramer({ maxFrame, encoding, blocks, dropFirstPartial: false });
    },
  };
};
