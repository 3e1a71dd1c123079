// What a session came to, with the places of the events that said it. One pass, remembering no readings.
import type { EventOf, Numbered } from '../events.js';
import type { ExpectedBounds, Verdict } from '../verdict.js';

export interface PinStory {
  readonly pin: string;
  readonly line: string;
  /** The last verdict counts. */
  readonly verdict: Verdict;
  readonly expected: ExpectedBounds;
  readonly settled: EventOf<'pin-settled'> | null;
  /** Events before the first verdict, and before the one that was agreed. */
  readonly judgedAt: number;
  readonly agreedAt: number | null;
}

export interface PressStory {
  readonly pin: string;
  readonly line: string;
  readonly begunAt: number;
  readonly judged: readonly (EventOf<'press-judged'> & { readonly at: number })[];
}

export interface SessionStory {
  readonly pins: ReadonlyMap<string, PinStory>;
  readonly presses: readonly PressStory[];
  readonly ranked: (EventOf<'suspects-ranked'> & { readonly at: number }) | null;
}

export const tellSession = (events: Iterable<Numbered>): SessionStory => {
  const pins = new Map<string, PinStory>();
  const settled = new Map<string, EventOf<'pin-settled'>>();
  const presses: PressStory[] = [];
  let ranked: SessionStory['ranked'] = null;
  let at = 0;
  for (const event of events) {
    switch (event.type) {
      case 'pin-settled':
        settled.set(event.pin, event);
        break;
      case 'pin-judged':
        if (event.verdict === 'unread') pins.delete(event.pin);
        else pins.set(event.pin, judged(event, at, pins.get(event.pin), settled.get(event.pin)));
        break;
      case 'press-begun':
        presses.push({ pin: event.pin, line: event.line, begunAt: at, judged: [] });
        break;
      case 'press-judged': {
        const last = presses.at(-1);
        if (last?.line !== event.line) break;
        presses[presses.length - 1] = { ...last, judged: [...last.judged, { ...event, at }] };
        break;
      }
      case 'suspects-ranked':
        ranked = { ...event, at };
        break;
      default:
        break;
    }
    at += 1;
  }
  return { pins, presses, ranked };
};

const judged = (
  { pin, line, verdict, expected, agreed }: EventOf<'pin-judged'>,
  at: number,
  before: PinStory | undefined,
  settled: EventOf<'pin-settled'> | undefined,
): PinStory => ({
  pin,
  line,
  verdict,
  expected,
  settled: settled ?? null,
  judgedAt: before?.judgedAt ?? at,
  agreedAt: agreed ? (before?.agreedAt ?? at) : (before?.agreedAt ?? null),
});
