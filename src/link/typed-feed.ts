// Values typed or piped, one a line, as a source of inputs. A typed value has no trace in time, so each line
// stands for one whole touch: the value held for three seconds, then a lift of a second. `OL` is a touch that reads
// overload and says so: the technician has looked, so it counts as the answer "open". Time is the feed's own,
// moved on by the lines alone, so that the same lines always make the same walk.
import type { Input } from '../core/inputs.js';
import type { MeasureFunction, Polarity } from '../core/reading.js';
import type { Feed, Frame, Link } from '../session/ports.js';
import { readTypedLine, type TypedLine } from './typed-line.js';

export interface TypedFeedOptions {
  readonly link: Link;
  readonly measure: { readonly function: MeasureFunction; readonly polarity: Polarity };
}

/** Readings in a second of a typed touch, and of the lift after it. */
const perSecond = 10;
/** Long enough for a rounded value, which could be a meter on its way to a finer range. */
const touchS = 3;
const liftS = 1;

export const createTypedFeed = ({ link, measure }: TypedFeedOptions): Feed => {
  let ticks = 0;
  let take: ((input: Input) => void) | undefined;

  const now = (): number => ticks / perSecond;
  const give = (input: Input): void => take?.(input);

  /** One reading after another; the first belongs to the moment itself. */
  const hold = (
    seconds: number,
    what: { value: number; resolution: number } | { overload: true },
  ): void => {
    for (let count = 0; count < seconds * perSecond; count += 1) {
      give({ kind: 'reading', reading: { t: now(), ...measure, ...what } });
      ticks += 1;
    }
  };

  const hear = (frame: Frame): void => {
    if (frame.text.trim() === '') return;
    const line: TypedLine =
      'overlong' in frame
        ? { typed: 'fault', says: `typed line too long: ${frame.text}` }
        : readTypedLine(frame.text, measure.function);
    switch (line.typed) {
      case 'value':
        hold(touchS, { value: line.value, resolution: line.resolution });
        hold(liftS, { overload: true });
        return;
      case 'overload':
        hold(liftS, { overload: true });
        give({ kind: 'act', t: now(), act: { act: 'open' } });
        return;
      case 'act':
        give({ kind: 'act', t: now(), act: { act: line.act } });
        return;
      case 'fault':
        give({ kind: 'reading', reading: { t: now(), fault: line.says } });
    }
  };

  return {
    title: `typed values from ${link.title}`,
    ownTime: true,
    start: (takes) => {
      take = takes;
      link.open({
        opened: () => give({ kind: 'link', t: now(), change: 'opened', detail: link.title }),
        frame: (_t, frame) => hear(frame),
        lost: (_t, detail) => give({ kind: 'link', t: now(), change: 'lost', detail }),
        failed: (_t, detail) => give({ kind: 'link', t: now(), change: 'failed', detail }),
        ended: () => give({ kind: 'link', t: now(), change: 'ended' }),
      });
    },
    stop: async () => {
      take = undefined;
      await link.close();
    },
  };
};
