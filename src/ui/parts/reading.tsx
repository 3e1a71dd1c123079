// The pin as a large contact and the live reading beside it.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { offBoard } from '../../core/profile/donor.js';
import { siUnit } from '../../core/reading.js';
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

const smallRows = 3;
const usualRows = 5;
const largeRows = 10;
const gap = 3;
/** Longer names of pins are written as text. */
const longestLargePin = 5;
const textContactWidth = 20;
const longestPin = 40;

export interface ReadingProps {
  readonly state: WalkState;
  readonly width: number;
  /** Ten rows instead of five. */
  readonly large: boolean;
}

export const Reading = ({ state, width, large }: ReadingProps): ReactElement => {
  const surroundings = useSurroundings();
  const height = large ? largeRows : usualRows;
  const contact = contactPicture(state, large, surroundings);
  const contactWidth = contact === null ? textContactWidth : widthOfPicture(contact);
  const room = width - contactWidth - gap - 1;
  const size = large ? sizeThatFits(state, room) : 'large';
  const lines = readingLines(state, size, surroundings, room);
  const lead = new Array<Line>((height - lines.length) >> 1).fill([]);
  return (
    <Box height={height} flexShrink={0} gap={gap} paddingLeft={1}>
      <Rows
        lines={contactLines(contact, state, surroundings)}
        width={contactWidth}
        height={height}
      />
      <Rows lines={[...lead, ...lines]} width={room} height={height} />
    </Box>
  );
};

export const SmallReading = ({ state, width }: Omit<ReadingProps, 'large'>): ReactElement => {
  const lines = readingLines(state, 'small', useSurroundings(), width - 1);
  return (
    <Rows lines={lines.map((line) => [span(' '), ...line])} width={width} height={smallRows} />
  );
};

/** Chosen by the widest reading the meter can show, so that it never changes while one is watched. */
const sizeThatFits = ({ accuracy, plan }: WalkState, room: number): ReadingSize => {
  const digits = '8'.repeat(String(accuracy.fullScaleCounts).length);
  const widest = (size: ReadingSize): number =>
    widthOfPicture(bigReading(`${digits}.`, `k${siUnit(plan.function)}`, size) ?? []);
  return (['double', 'double-plain'] as const).find((size) => widest(size) <= room) ?? 'large';
};

/** The pin's name cut out of a contact, or null where it cannot be drawn. */
const contactPicture = (
  state: WalkState,
  large: boolean,
  { words }: Surroundings,
): Picture | null => {
  const subject = selectSubject(state);
  const name =
    state.stage === 'ground-check'
      ? words.screen.groundContact(state.grounds === 0 ? 1 : 2)
      : cleanText(offBoard(subject?.planned.pin ?? '').name, longestPin);
  const word = name.length <= longestLargePin ? bigWord(name) : null;
  if (word === null) return null;
  const widest = Math.max(
    ...state.plan.pins
      .filter(({ pin, board }) => board !== 'donor' && pin.length <= longestLargePin)
      .map(({ pin }) => widthOfPicture(bigWord(cleanText(pin, longestPin)) ?? [])),
  );
  const centred = widened(word, widest);
  return large ? stamped(doubled(centred), { x: 4, y: 4 }, 2) : stamped(centred, { x: 3, y: 2 }, 1);
};

const widened = (inner: Picture, width: number): Picture => {
  const free = Math.max(0, width - widthOfPicture(inner));
  const blank = (columns: number): Picture =>
    inner.map(() => new Array<boolean>(columns).fill(false));
  return beside([blank(free >> 1), inner, blank(free - (free >> 1))], 0);
};

const contactLines = (
  contact: Picture | null,
  state: WalkState,
  { theme }: Surroundings,
): readonly Line[] => {
  const subject = selectSubject(state);
  const judged = subject !== null && (subject.judged || subject.confirming);
  const style: Style = judged ? theme.verdict[subject.record.verdict] : theme.style.accent;
  if (contact !== null) return pictureLines(contact, style, theme.unicode);
  if (subject === null) return [];
  const pin = cleanText(offBoard(subject.planned.pin).name, longestPin);
  return [[], [], [span(` ${pin} `, { ...style, inverse: true, bold: true })]];
};

const readingLines = (
  state: WalkState,
  size: ReadingSize,
  { theme, words }: Surroundings,
  room: number,
): readonly Line[] => {
  const live = selectLive(state);
  const { large } = words.screen;
  if (live.kind === 'value') {
    const halted = state.paused !== null || state.hold !== null;
    const style = halted ? theme.style.quiet : theme.style.strong;
    const drawing = bigReading(live.digits, live.unit, size);
    return drawing === null || widthOfPicture(drawing) > room
      ? [[], [span(`${live.digits} ${live.unit}`, style)]]
      : pictureLines(drawing, style, theme.unicode);
  }
  const text =
    live.kind === 'overload' ? large.overload : live.kind === 'fault' ? large.fault : large.blank;
  const drawing = bigReading(text, '', size);
  return drawing === null
    ? [[], [span(text, theme.style.quiet)]]
    : pictureLines(drawing, theme.style.quiet, theme.unicode);
};

const pictureLines = (drawing: Picture, style: Style, unicode: boolean): readonly Line[] =>
  printPicture(drawing, unicode).map((text) => [span(text, style)]);
