// Standard input as a link: lines typed or piped, in UTF-8, from the first one on. Nothing can be sent to it,
// and it does not come back once it has ended.
import type { Readable } from 'node:stream';
import { createFramer } from '../core/framing.js';
import type { Clock, Link, LinkListener } from '../session/ports.js';

const longestLine = 400;
const lineEnd = new Uint8Array([0x0a]);

export const createStdinLink = (clock: Clock, input: Readable = process.stdin): Link => {
  const framer = createFramer({ maxFrame: longestLine, encoding: 'utf8', dropFirstPartial: false });
  let listener: LinkListener | undefined;

  const take = (chunk: Uint8Array): void => {
    const t = clock.now();
    for (const frame of framer.push(chunk)) listener?.frame(t, frame);
  };
  const hear = (chunk: Buffer | string): void => take(Buffer.from(chunk));
  /** The last line may lack its end. */
  const end = (): void => {
    take(lineEnd);
    listener?.ended(clock.now());
  };
  const fail = (error: Error): void => {
    listener?.failed(clock.now(), `standard input: ${error.message}`);
  };

  return {
    title: 'standard input',
    open: (hears) => {
      if (listener !== undefined) throw new Error('standard input was opened twice');
      listener = hears;
      hears.opened(clock.now(), false);
      input.on('data', hear).once('end', end).once('error', fail);
    },
    send: () => undefined,
    close: async () => {
      listener = undefined;
      input.off('data', hear).off('end', end).off('error', fail);
      input.pause();
    },
  };
};
