// Every press test with its finding and the readings it was judged from; what the places showed when held against
// each other; presses at will; the places probed along a line; and the last ranking of suspects.
import type { EventOf, Numbered } from '../events.js';
import type { ActName, CueName } from '../inputs.js';
import { markedSpans } from '../press/marked-presses.js';
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

/** Pressed when the technician liked. */
export interface FreelyPressed {
  readonly traced: EventOf<'press-traced'>;
  readonly points: readonly PressPoint[];
  /** From each mark "pressing" to its "released", where the technician gave any. */
  readonly marks: readonly { readonly from: number; readonly to: number }[];
}

export interface PressLog {
  take(event: Numbered): void;
  readonly tests: readonly Pressed[];
  readonly compared: readonly EventOf<'press-compared'>[];
  readonly free: readonly FreelyPressed[];
  readonly probed: readonly EventOf<'place-judged'>[];
  readonly ranked: EventOf<'suspects-ranked'> | null;
}

/** A minute at 50 readings/s; more of one test is not drawn. */
const mostPoints = 3000;

export const createPressLog = (): PressLog => {
  const tests: Pressed[] = [];
  const compared: EventOf<'press-compared'>[] = [];
  const free: FreelyPressed[] = [];
  const probed: EventOf<'place-judged'>[] = [];
  let acts: { readonly t: number; readonly act: ActName }[] = [];
  let ranked: EventOf<'suspects-ranked'> | null = null;
  let points: PressPoint[] = [];
  let cues: { readonly t: number; readonly cue: CueName }[] = [];
  let sham = false;
  let under = false;
  const begin = (isSham: boolean): void => {
    points = [];
    cues = [];
    acts = [];
    sham = isSham;
    under = true;
  };
  return {
    tests,
    compared,
    free,
    probed,
    get ranked() {
      return ranked;
    },
    take(event) {
      switch (event.type) {
        case 'press-begun':
          if (event.free === true) begin(false);
          break;
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
        case 'act-taken':
          if (under) acts.push(event);
          break;
        case 'press-traced':
          free.push({ traced: event, points, marks: marksIn(acts, event.t) });
          under = false;
          break;
        case 'place-judged':
          probed.push(event);
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

const marksIn = (acts: Parameters<typeof markedSpans>[0], endS: number): FreelyPressed['marks'] =>
  markedSpans(acts, endS).flatMap(({ pressed, fromS, toS }) =>
    pressed ? [{ from: fromS, to: toS }] : [],
  );
