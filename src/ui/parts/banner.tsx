// What must not be missed: a question, a hold, a pause, a file that cannot be written. A frame, large letters and
// a sentence; colour only helps.
import type { ReactElement } from 'react';
import type { Status } from '../../core/select/status.js';
import { probeInWords } from '../../core/words/describe-suspects.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { cutLine, type Line, padTo, span, wrapText } from '../draw/line.js';
import { printPicture, widthOfPicture } from '../draw/picture.js';
import { shownKey } from '../keys/key-map.js';
import type { Style } from '../theme.js';
import { Rows } from './rows.js';

export const Banner = ({
  status,
  width,
  rows,
}: {
  readonly status: Status;
  readonly width: number;
  readonly rows: number;
}): ReactElement | null => {
  const surroundings = useSurroundings();
  const message = messageFor(status, surroundings);
  return message === null ? null : (
    <Rows width={width} lines={bannerLines(message, width, rows, surroundings)} height={rows} />
  );
};

export interface Message {
  readonly large: string;
  readonly sentences: readonly string[];
  readonly style: Style;
}

export const messageFor = (
  status: Status,
  { words, keys, theme }: Surroundings,
): Message | null => {
  const { large, ...screen } = words.screen;
  const key = (act: 'open' | 'next' | 'dismiss' | 'pause'): string =>
    `"${shownKey(keys, act) ?? screen.key[act]}"`;
  switch (status.kind) {
    case 'trouble':
      return {
        large: large.trouble,
        sentences: screen.trouble(status.reason),
        style: theme.style.alarm,
      };
    case 'paused':
      return {
        large: large.paused,
        sentences: screen.paused(status.reason, key('pause')),
        style: status.reason === 'asked' ? theme.style.notice : theme.style.alarm,
      };
    case 'held':
      return {
        large: large.held,
        sentences: screen.held(status.reason, status.detail),
        style: theme.style.alarm,
      };
    case 'question':
      return {
        large: large.question(status.question, status.place === null ? status.pin : ''),
        sentences: screen.question(
          status.question,
          status.place === null ? words.pinName(status.pin) : probeInWords(status.place, words),
          { open: key('open'), next: key('next'), dismiss: key('dismiss') },
          status.expectedOverload,
        ),
        style: theme.style.alarm,
      };
    case 'judged':
    case 'again':
    case 'settling':
    case 'charging':
    case 'restless':
    case 'waiting':
    case 'lift':
    case 'ready':
    case 'ground':
    case 'finished':
      return null;
  }
};

/** A frame, the large word, the sentences under it. Too low for that, the word is written small. */
const bannerLines = (
  { large, sentences, style }: Message,
  width: number,
  rows: number,
  { theme }: Surroundings,
): readonly Line[] => {
  const { inverse: _, ...ink } = style;
  const { top, side, bottom } = theme.line.frame;
  const inner = width - 8;
  const framed = (line: Line): Line => [
    span(' '),
    span(side, ink),
    span('  '),
    ...padTo(cutLine(line, inner, theme), inner),
    span('  '),
    span(side, ink),
  ];
  const edge = (character: string): Line => [
    span(' '),
    span(`${side}${character.repeat(width - 4)}${side}`, ink),
  ];
  const drawing = rows >= 7 ? bigWord(large) : null;
  const word: readonly Line[] =
    drawing === null || widthOfPicture(drawing) > inner
      ? [[span(large, ink)]]
      : printPicture(drawing, theme.unicode).map((text) => [span(text, ink)]);
  const texts = sentences.flatMap((sentence) =>
    wrapText(sentence, inner).map((text): Line => [span(text, theme.style.text)]),
  );
  const room = rows - 2;
  const between: readonly Line[] = room > word.length + texts.length ? [[]] : [];
  const body = [...word, ...between, ...texts].slice(0, room);
  const above = Math.max(0, room - body.length) >> 1;
  const below = Math.max(0, room - body.length - above);
  const blank = (count: number): readonly Line[] => new Array<Line>(count).fill([]);
  return [edge(top), ...[...blank(above), ...body, ...blank(below)].map(framed), edge(bottom)];
};
