// The pin as a large contact and the live reading beside it.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { selectLive } from '../../core/select/live.js';
import { selectSubject } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigReading, bigWord, type ReadingSize } from '../draw/big-text.js';
import { type Line, span } from '../draw/line.js';
import {
  beside,
  doubled,
  type Picture,
  printPicture,
  stamped,
  widthOfPicture,
} from '../draw/picture.js';
import type { Style } from '../theme.js';
import { Rows } from './rows.js';

const rowsOf: Readonly<Record<ReadingSize, number>> = { small: 3, large: 5, double: 10 };
/** Longer names of pins are written as text. */
const longestLargePin = 5;

export const Reading = ({
  state,
  size,
  padded,
}: {
  readonly state: WalkState;
  readonly size: ReadingSize;
  /** Whether the pin's large contact stands before the reading. */
  readonly padded: boolean;
}): ReactElement => {
  const surroundings = useSurroundings();
  const height = rowsOf[size];
  return (
    <Box height={height} flexShrink={0} gap={size === 'small' ? 2 : 3} paddingLeft={1}>
      {padded ? <Rows lines={contactLines(state, size, surroundings)} height={height} /> : null}
      <Rows lines={readingLines(state, size, surroundings)} height={height} />
    </Box>
  );
};

const contactLines = (
  state: WalkState,
  size: ReadingSize,
  { theme }: Surroundings,
): readonly Line[] => {
  const subject = selectSubject(state);
  if (subject === null) return [];
  const { record, planned, judged, confirming } = subject;
  const style: Style = judged || confirming ? theme.verdict[record.verdict] : theme.style.accent;
  const pin = cleanText(planned.pin, 40);
  const word = pin.length <= longestLargePin ? bigWord(pin) : null;
  if (word === null) return [[], [], [span(` ${pin} `, { ...style, inverse: true, bold: true })]];
  const widest = Math.max(
    ...state.plan.pins
      .filter(({ pin: { length } }) => length <= longestLargePin)
      .map((other) => widthOfPicture(bigWord(cleanText(other.pin, 40)) ?? [])),
  );
  const centred = widen(word, widest);
  const contact =
    size === 'double'
      ? stamped(doubled(centred), { x: 4, y: 4 })
      : stamped(centred, size === 'small' ? { x: 1, y: 0 } : { x: 3, y: 2 });
  return picture(contact, style, theme.unicode);
};

const widen = (inner: Picture, width: number): Picture => {
  const free = Math.max(0, width - widthOfPicture(inner));
  const blank = (columns: number): Picture =>
    inner.map(() => new Array<boolean>(columns).fill(false));
  return beside([blank(free >> 1), inner, blank(free - (free >> 1))], 0);
};

const readingLines = (
  state: WalkState,
  size: ReadingSize,
  { theme, words }: Surroundings,
): readonly Line[] => {
  const live = selectLive(state);
  const { large } = words.screen;
  if (live.kind === 'value') {
    const style =
      state.paused === null && state.hold === null ? theme.style.strong : theme.style.quiet;
    const drawing = bigReading(live.digits, live.unit, size);
    return drawing === null
      ? [[], [span(`${live.digits} ${live.unit}`, style)]]
      : picture(drawing, style, theme.unicode);
  }
  const text =
    live.kind === 'overload' ? large.overload : live.kind === 'fault' ? large.fault : large.blank;
  const drawing = bigReading(text, '', size);
  return drawing === null
    ? [[], [span(text, theme.style.quiet)]]
    : picture(drawing, theme.style.quiet, theme.unicode);
};

const picture = (drawing: Picture, style: Style, unicode: boolean): readonly Line[] =>
  printPicture(drawing, unicode).map((text) => [span(text, style)]);
