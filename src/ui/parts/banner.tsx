// What must not be missed: a question, a hold, a pause, a file that cannot be written. A frame, large letters and
// a sentence; colour only helps.
import type { ReactElement } from 'react';
import type { Status } from '../../core/select/status.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { cutLine, type Line, padTo, span, widthOf, wrapText } from '../draw/line.js';
import { printPicture } from '../draw/picture.js';
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
    <Rows lines={bannerLines(message, width, rows, surroundings)} height={rows} />
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
        large: large.question(status.question, status.pin),
        sentences: screen.question(status.question, status.pin, {
          open: key('open'),
          next: key('next'),
          dismiss: key('dismiss'),
        }),
        style: theme.style.alarm,
      };
    case 'judged':
    case 'again':
    case 'settling':
    case 'charging':
    case 'restless':
    case 'waiting':
    case 'ground':
    case 'finished':
      return null;
  }
};

/** As tall as it may be: a solid bar above and below, the large word between, the sentences under it. */
const bannerLines = (
  { large, sentences, style }: Message,
  width: number,
  rows: number,
  { theme }: Surroundings,
): readonly Line[] => {
  const inner = width - 6;
  const bar: Line = [span(' '), span(' '.repeat(width - 2), style)];
  const plain: Style =
    style.color === undefined ? { bold: true } : { bold: true, color: style.color };
  const framed = (line: Line): Line => {
    const cut = cutLine(line, inner, theme);
    return [
      span(' '),
      span('  ', style),
      span(' '),
      ...padTo(cut, Math.max(inner, widthOf(cut))),
      span('  ', style),
    ];
  };
  const drawing = bigWord(large);
  const word: readonly Line[] =
    drawing === null || rows < 6
      ? [[span(large, plain)]]
      : printPicture(drawing, theme.unicode).map((text) => [span(text, plain)]);
  const texts = sentences.flatMap((sentence) =>
    wrapText(sentence, inner).map((text): Line => [span(text, theme.style.text)]),
  );
  const bars = rows >= 5;
  const gap: readonly Line[] = rows >= word.length + texts.length + 4 ? [[]] : [];
  const body = [...gap, ...word, ...gap, ...texts].slice(0, rows - (bars ? 2 : 0));
  const filled = [
    ...body,
    ...new Array<Line>(Math.max(0, rows - (bars ? 2 : 0) - body.length)).fill([]),
  ];
  return bars ? [bar, ...filled.map(framed), bar] : filled.map(framed);
};
