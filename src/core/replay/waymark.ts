// The places in a session worth going to: whatever is not as it should be, every question, every note. Pure; it
// goes by the events' own words and needs nothing of the walk's state.
import type { WalkEvent } from '../events.js';
import type { Verdict } from '../verdict.js';

const waymarkKinds = [
  'verdict',
  'question',
  'link',
  'held',
  'ground',
  'realigned',
  'press',
  'note',
] as const;
export type WaymarkKind = (typeof waymarkKinds)[number];

/** What was decided at one moment is one place to go to. */
export interface Waymark {
  readonly kind: WaymarkKind;
  readonly t: number;
  /** How many events come before its first one, and how many there are with its last one. */
  readonly from: number;
  readonly to: number;
  readonly pin: string | null;
  readonly verdict: Verdict | null;
}

const kinds: ReadonlyMap<string, WaymarkKind> = new Map([
  ['question-asked', 'question'],
  ['walk-held', 'held'],
  ['ground-missed', 'ground'],
  ['ground-repeated', 'ground'],
  ['ground-doubted', 'ground'],
  ['walk-realigned', 'realigned'],
  ['press-judged', 'press'],
]);

const lostLink: ReadonlySet<string> = new Set(['lost', 'silent', 'failed']);

/** Why the event is worth going to, or null where it is not. */
export const waymarkKind = (event: WalkEvent): WaymarkKind | null => {
  switch (event.type) {
    case 'pin-judged':
      return event.verdict === 'normal' ? null : 'verdict';
    case 'link-changed':
      return lostLink.has(event.change) ? 'link' : null;
    case 'act-taken':
      return event.act === 'note' ? 'note' : null;
    default:
      return kinds.get(event.type) ?? null;
  }
};

export interface WaymarkList {
  readonly waymarks: readonly Waymark[];
  /** The next event in order, which has `before` events before it. */
  take(event: WalkEvent, before: number, t: number): void;
}

/** Gathers a session's waymarks. A verdict that only confirms the one before it is no new place. */
export const createWaymarkList = (): WaymarkList => {
  const waymarks: Waymark[] = [];
  return {
    waymarks,
    take(event, before, t) {
      const kind = waymarkKind(event);
      if (kind === null) return;
      const last = waymarks.at(-1);
      if (last?.t === t) {
        waymarks[waymarks.length - 1] = { ...last, to: before + 1 };
        return;
      }
      const pin = 'pin' in event ? (event.pin ?? null) : null;
      const verdict = event.type === 'pin-judged' ? event.verdict : null;
      if (verdict !== null && last?.pin === pin && last.verdict === verdict) return;
      waymarks.push({ kind, t, from: before, to: before + 1, pin, verdict });
    },
  };
};
