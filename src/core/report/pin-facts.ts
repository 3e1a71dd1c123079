// One pin with everything known of it, in walking order: plan, last verdict, touches, line and advice.

import type { PlannedPin } from '../profile/plan.js';
import type { ProfileLine } from '../profile/profile-format.js';
import type { Verdict } from '../verdict.js';
import type { PinRecord } from '../walk/state.js';
import type { Account } from './account.js';
import type { Touch } from './touch-log.js';

export interface PinFacts {
  readonly planned: PlannedPin;
  readonly record: PinRecord;
  readonly line: ProfileLine | undefined;
  readonly touches: readonly Touch[];
  /** The technician said, or tapped on ground, that the probe was on the pin while nothing was read. */
  readonly confirmed: boolean;
  /** Touches that led to the verdict that stands. */
  readonly agreeing: number;
  /** What the donor beside it read there; null where none was walked. */
  readonly donor: PinRecord | null;
}

export const pinsOf = (account: Account): readonly PinFacts[] => {
  const { state, opened, touches } = account;
  const { lines } = opened.profile.content;
  const confirmed = confirmedPins(account);
  return state.plan.pins.flatMap((planned, index) => {
    const record = state.pins[index];
    if (record === undefined || planned.board === 'donor') return [];
    const isBeside = state.plan.pins[index - 1]?.board === 'donor';
    const own = touches.get(planned.pin) ?? [];
    return [
      {
        planned,
        record,
        line: Object.hasOwn(lines, planned.line) ? lines[planned.line] : undefined,
        touches: own,
        confirmed: confirmed.has(planned.pin),
        agreeing: own.filter(({ verdict }) => verdict === record.verdict).length,
        donor: isBeside ? (state.pins[index - 1] ?? null) : null,
      },
    ];
  });
};

const confirmedPins = ({ asked, acts }: Account): ReadonlySet<string> =>
  new Set([
    ...asked.flatMap(({ question, pin, answer }) =>
      question === 'open' && (answer?.by === 'act' || answer?.by === 'ground-taps') ? [pin] : [],
    ),
    ...acts.flatMap((entry) =>
      entry.type === 'act-taken' && entry.act === 'open' && entry.pin !== undefined
        ? [entry.pin]
        : [],
    ),
  ]);

export const isFaulty = (verdict: Verdict): boolean =>
  verdict === 'low' || verdict === 'high' || verdict === 'short' || verdict === 'open';

export const isUnclear = (verdict: Verdict): boolean =>
  verdict === 'unsure' || verdict === 'wobble';
