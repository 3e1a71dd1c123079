// The scale: a rail with the band between the limits and the reading's place on it. Three lines: what is
// expected, the rail, and the limits' values under their places.

import { formatReading } from '../../core/measure/format-reading.js';
import { lowerLimitAt, type Place, placeOf, upperLimitAt } from '../../core/select/scale.js';
import type { ExpectedBounds } from '../../core/verdict.js';
import { shownExpected } from '../../core/words/shown.js';
import type { Words } from '../../core/words/words.js';
import type { Style, Theme } from '../theme.js';
import { joinCells } from './chart.js';
import { type Line, span, spread } from './line.js';

export interface RailView {
  readonly expected: ExpectedBounds;
  readonly unit: string;
  /** The value to place, or null where there is none to place. */
  readonly value: number | null;
  /** How the marker looks. */
  readonly style: Style;
  readonly width: number;
}

export const drawRail = (view: RailView, words: Words, theme: Theme): readonly Line[] => {
  const { expected, unit, value, width } = view;
  if (expected === null || expected === 'overload') {
    return [[span(shownExpected(expected, unit, words), theme.style.quiet)], [], []];
  }
  const place = value === null ? null : placeOf(value, expected);
  return [
    nominalLine(view, expected, words, theme),
    rail(place, view, theme),
    limits(expected, unit, width, theme),
  ];
};

/** What a good board reads, and how far off the reading is. */
const nominalLine = (
  { value, unit, width, style }: RailView,
  { nominal, low, high }: { readonly nominal: number; readonly low: number; readonly high: number },
  words: Words,
  theme: Theme,
): Line => {
  if (low <= 0) {
    const most = words.screen.atMost(formatReading(high, null, unit));
    return [span(most, theme.style.quiet)];
  }
  const said = [
    span(`${words.screen.expected} `, theme.style.quiet),
    span(formatReading(nominal, null, unit), theme.style.strong),
  ];
  if (value === null) return said;
  const percent = (100 * (value - nominal)) / nominal;
  const off = Math.abs(percent) >= 999 ? '' : words.screen.off(percent);
  return spread(said, [span(off, { ...style, bold: true })], width, theme);
};

/** The rail alone, for a screen with one line to spare. */
export const rail = (
  place: Place | null,
  { width, style }: Pick<RailView, 'width' | 'style'>,
  theme: Theme,
): Line => {
  const column = columnAt(width);
  const [low, high] = [column(lowerLimitAt), column(upperLimitAt)];
  const cells = Array.from({ length: width }, (_, x) =>
    x === low || x === high
      ? { text: theme.line.edge, style: theme.style.quiet }
      : x > low && x < high
        ? { text: theme.line.band, style: theme.verdict.normal }
        : { text: theme.line.rail, style: theme.style.faint },
  );
  if (place !== null) {
    const text =
      place.beyond === 'below'
        ? theme.line.below
        : place.beyond === 'above'
          ? theme.line.above
          : theme.line.here;
    cells[column(place.at)] = { text, style: { ...style, bold: true } };
  }
  return joinCells(cells);
};

const columnAt =
  (width: number) =>
  (at: number): number =>
    Math.round(at * (width - 1));

const limits = (
  { low, high }: { readonly low: number; readonly high: number },
  unit: string,
  width: number,
  theme: Theme,
): Line => {
  const column = columnAt(width);
  const lower = formatReading(low, null, unit);
  const upper = formatReading(high, null, unit);
  const lowerFrom = Math.max(0, column(lowerLimitAt) - (lower.length >> 1));
  const upperFrom = Math.max(
    lowerFrom + lower.length + 1,
    Math.min(width - upper.length, column(upperLimitAt) - (upper.length >> 1)),
  );
  return [
    span(' '.repeat(lowerFrom)),
    span(lower, theme.style.quiet),
    span(' '.repeat(upperFrom - lowerFrom - lower.length)),
    span(upper, theme.style.quiet),
  ];
};
