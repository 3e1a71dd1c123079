// The input that a stored event records, so that a session can be decided anew. Events that were decided give
// none: they will be decided again.
import type { WalkEvent } from '../events.js';
import type { Input } from '../inputs.js';

export const inputOf = (event: WalkEvent): Input | null => {
  switch (event.type) {
    case 'reading-taken': {
      const { type: _type, seq: _seq, ...reading } = event as typeof event & { seq?: number };
      return { kind: 'reading', reading };
    }
    case 'act-taken': {
      // A reply was read from the readings, and will be read from them again.
      if (event.by === 'pad') return null;
      const { t, act, pin, text, line, part, side } = event;
      return {
        kind: 'act',
        t,
        act: {
          act,
          ...(pin === undefined ? {} : { pin }),
          ...(text === undefined ? {} : { text }),
          ...(line === undefined ? {} : { line }),
          ...(part === undefined ? {} : { part }),
          ...(side === undefined ? {} : { side }),
        },
      };
    }
    case 'cue-given':
      // A cue with a place was the walk's own decision, and will be decided again.
      return event.place !== undefined ? null : { kind: 'cue', t: event.t, cue: event.cue };
    case 'link-changed': {
      const { t, change, detail } = event;
      return { kind: 'link', t, change, ...(detail === undefined ? {} : { detail }) };
    }
    case 'meter-spoke':
      return { kind: 'meter', t: event.t, says: event.says, text: event.text };
    case 'file-changed':
      return { kind: 'file', t: event.t, change: event.change, detail: event.detail };
    default:
      return null;
  }
};
