// One good board as learning sees it: what each pin read, in one function and polarity, and where it comes from.
import type { WalkEvent } from '../events.js';
import type { MeasureFunction, Polarity } from '../reading.js';

export interface BoardPin {
  readonly pin: string;
  readonly line: string;
  /** Ohm or volt; null for overload. */
  readonly value: number | null;
  /** Null where it is not known. */
  readonly standardUncertainty: number | null;
  /** Full scale, where it is known. */
  readonly range?: number;
}

export interface Board {
  /** What it is called in messages, cleaned. No two boards share a name. */
  readonly name: string;
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
  /** When its session began; null for notes. */
  readonly wallTime: string | null;
  readonly simulated: boolean;
  readonly pins: readonly BoardPin[];
}

/**
 * The board of a session: the last value of every pin. What wobbled or was taken back is left out; verdicts by
 * older expectations are not looked at.
 * Null when there is no opening among the events.
 */
export const gatherBoard = (name: string, events: Iterable<WalkEvent>): Board | null => {
  let board: Omit<Board, 'name' | 'pins'> | null = null;
  const pins = new Map<string, BoardPin>();
  for (const event of events) {
    if (event.type === 'session-opened') {
      const { measure, wallTime, simulated } = event;
      board = { function: measure.function, polarity: measure.polarity, wallTime, simulated };
    } else if (event.type === 'pin-settled') {
      const { pin, line, value, standardUncertainty, range } = event;
      pins.set(pin, {
        pin,
        line,
        value: value ?? null,
        standardUncertainty,
        ...(range === undefined ? {} : { range }),
      });
    } else if (event.type === 'pin-judged') {
      if (event.verdict === 'unread' || event.verdict === 'wobble') pins.delete(event.pin);
    }
  }
  return board === null ? null : { name, ...board, pins: [...pins.values()] };
};
