// Every press test with its finding and the readings it was judged from, thinned for drawing; what the places
// showed when held against each other; and the last ranking of suspects.
import type { EventOf, Numbered } from '../events.js';
import type { CueName } from '../inputs.js';
import { isOverload, isValue } from '../reading.js';

export interface PressPoint {
  readonly t: number;
  /** Null for overload. */
  readonly value: number | null;
}

export interface Pressed {
  readonly judged: EventOf<'press-judged'>;
  /** Bare board, pressed for comparison. */
  readonly sham: boolean;
  readonly points: readonly PressPoint[];
  /** As they were given, in order. */
  readonly cues: readonly { readonly t: number; readonly cue: CueName }[];
}

export interface PressLog {
  take(event: Numbered): void;
  readonly tests: readonly Pressed[];
  readonly compared: readonly EventOf<'press-compared'>[];
  readonly ranked: EventOf<'suspects-ranked'> | null;
}

/** A minute at 50 readings/s; more of one test is not drawn. */
const mostPoints = 3000;

export const createPressLog = (): PressLog => {
  const tests: Pressed[] = [];
  const compared: EventOf<'press-compared'>[] = [];
  let ranked: EventOf<'suspects-ranked'> | null = null;
  let points: PressPoint[] = [];
  let cues: { readonly t: number; readonly cue: CueName }[] = [];
  let sham = false;
  let under = false;
  const begin = (isSham: boolean): void => {
    points = [];
    cues = [];
    sham = isSham;
    under = true;
  };
  return {
    tests,
    compared,
    get ranked() {
      return ranked;
    },
    take(event) {
      switch (event.type) {
        case 'press-moved':
          begin(event.sham);
          break;
        case 'cue-given':
          if (!under) begin(false);
          cues.push({ t: event.t, cue: event.cue });
          break;
        case 'reading-taken':
          if (!under || points.length >= mostPoints) break;
          if (isValue(event)) points.push({ t: event.t, value: event.value });
          else if (isOverload(event)) points.push({ t: event.t, value: null });
          break;
        case 'press-judged':
          tests.push({ judged: event, sham: under && sham, points, cues });
          under = false;
          break;
        case 'press-ended':
          under = false;
          break;
        case 'press-compared':
          compared.push(event);
          break;
        case 'suspects-ranked':
          ranked = event;
          break;
        default:
      }
    },
  };
};
