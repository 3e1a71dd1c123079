// One good board as learning sees it: what each pin read, in one function and polarity, and where it comes from.
import type { WalkEvent } from '../events.js';
import { isBenchSpeaking } from '../meter/bench-identity.js';
import { offBoard } from '../profile/donor.js';
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
 * older expectations are not looked at. Where a donor was walked beside a patient, the donor is the good board.
 * Null when there is no opening among the events.
 */
export const gatherBoard = (name: string, events: Iterable<WalkEvent>): Board | null => {
  let board: Omit<Board, 'name' | 'pins'> | null = null;
  const pins = new Map<string, BoardPin>();
  let good: 'donor' | undefined;
  let bench = false;
  for (const event of events) {
    if (event.type === 'session-opened') {
      const { measure, wallTime, simulated, donor } = event;
      good = donor === undefined ? undefined : 'donor';
      board = { function: measure.function, polarity: measure.polarity, wallTime, simulated };
    } else if (isBenchSpeaking(event)) {
      bench = true;
    } else if (event.type === 'pin-settled' && event.board === good) {
      const { value, standardUncertainty, range } = event;
      const { name: pin } = offBoard(event.pin);
      const { name: line } = offBoard(event.line);
      pins.set(pin, {
        pin,
        line,
        value: value ?? null,
        standardUncertainty,
        ...(range === undefined ? {} : { range }),
      });
    } else if (event.type === 'pin-judged' && event.board === good) {
      const isRead = event.verdict !== 'unread' && event.verdict !== 'wobble';
      if (!isRead) pins.delete(offBoard(event.pin).name);
    }
  }
  if (board === null) return null;
  const { simulated } = board;
  return { name, ...board, simulated: simulated || bench, pins: [...pins.values()] };
};
