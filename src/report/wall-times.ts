// The calendar of a session: its own seconds to wall time, in the zone in which it was written. What a session
// file says of time is not trusted: an impossible time or an unknown zone is taken as none and as UTC.
import type { Account } from '../core/report/account.js';
import type { Times } from '../core/report/times.js';
import type { Day } from '../core/words/report-words.js';

interface Anchor {
  readonly calendar: Intl.DateTimeFormat;
  readonly t: number;
  readonly epochMs: number;
  readonly zone: string;
}

export const wallTimes = ({ sittings, endT }: Account): Times => {
  const anchors = sittings.flatMap(({ t, wallTime, zone }): Anchor[] => {
    const epochMs = wallTime === null ? Number.NaN : Date.parse(wallTime);
    return Number.isFinite(epochMs) ? [{ t, epochMs, ...calendarOf(zone) }] : [];
  });
  const first = anchors[0];
  const wallOf = (t: number): Wall | null => {
    const anchor = anchors.findLast((known) => known.t <= t) ?? first;
    return anchor === undefined
      ? null
      : wallAt(anchor.epochMs + (t - anchor.t) * 1000, anchor.calendar);
  };
  const [began, ended] = [wallOf(first?.t ?? 0), wallOf(endT)];
  const oneDay = began !== null && ended !== null && dateOf(began) === dateOf(ended);
  return {
    zone: first?.zone ?? null,
    dayOf: wallOf,
    hourOf(t) {
      const wall = wallOf(t);
      return wall === null ? null : `${pad(wall.hour)}:${pad(wall.minute)}`;
    },
    momentOf(t) {
      const wall = wallOf(t);
      if (wall === null) return `${t.toFixed(1)} s`;
      const time = `${pad(wall.hour)}:${pad(wall.minute)}:${pad(wall.second)}`;
      return oneDay ? time : `${dateOf(wall)} ${time}`;
    },
  };
};

/** Today, for the date on which a report is made. */
export const today = (now: Date): Day => ({
  year: now.getFullYear(),
  month: now.getMonth() + 1,
  day: now.getDate(),
});

interface Wall extends Day {
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** ECMAScript time values reach this far from 1970 (ECMA-262, time values). */
const lastTimeMs = 8.64e15;

const wallAt = (epochMs: number, calendar: Intl.DateTimeFormat): Wall | null => {
  if (!(Math.abs(epochMs) <= lastTimeMs)) return null;
  const parts = calendar.formatToParts(epochMs);
  const part = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((found) => found.type === type)?.value);
  return {
    year: part('year'),
    month: part('month'),
    day: part('day'),
    hour: part('hour'),
    minute: part('minute'),
    second: part('second'),
  };
};

const calendarOf = (zone: string | null): Pick<Anchor, 'calendar' | 'zone'> => {
  try {
    const calendar = calendarIn(zone ?? 'UTC');
    return { calendar, zone: calendar.resolvedOptions().timeZone };
  } catch {
    return { calendar: calendarIn('UTC'), zone: 'UTC' };
  }
};

const calendarIn = (timeZone: string): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });

const pad = (n: number): string => String(n).padStart(2, '0');
const dateOf = ({ year, month, day }: Day): string => `${year}-${pad(month)}-${pad(day)}`;
