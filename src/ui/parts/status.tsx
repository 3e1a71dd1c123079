// One large word for how it stands: the verdict, or how the touch is coming along.
import type { ReactElement } from 'react';
import { type Status as StatusView, selectStatus } from '../../core/select/status.js';
import type { WalkState } from '../../core/walk/state.js';
import type { Words } from '../../core/words/words.js';
import { useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { type Line, span } from '../draw/line.js';
import { printPicture, widthOfPicture } from '../draw/picture.js';
import type { Style, Theme } from '../theme.js';
import { Rows } from './rows.js';

export const Status = ({
  state,
  trouble,
  width,
}: {
  readonly state: WalkState;
  readonly trouble: string | null;
  readonly width: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const status = selectStatus(state, trouble);
  return <Rows width={width} lines={statusLines(status, words, theme)} height={3} />;
};

const statusLines = (status: StatusView, words: Words, theme: Theme): readonly Line[] => {
  const { text, style, filled } = wordFor(status, words, theme);
  const drawing = bigWord(text);
  if (drawing === null) return [[], [span(` ${text}`, style)], []];
  const at = Math.round(widthOfPicture(drawing) * filled);
  return printPicture(drawing, theme.unicode).map((row) => [
    span(' '),
    span(row.slice(0, at), style),
    span(unfilled(row.slice(at), theme), theme.style.faint),
  ]);
};

const unfilled = (text: string, { unfilled: mark }: Theme): string =>
  mark === null ? text : text.replace(/\S/gu, mark);

export interface Word {
  readonly text: string;
  readonly style: Style;
  /** How much of the word is inked, 0 to 1: a touch that settles fills it. */
  readonly filled: number;
}

/** The status in a word, and how it looks. */
export const wordFor = (status: StatusView, { screen, verdict }: Words, theme: Theme): Word => {
  const { large } = screen;
  const whole = (text: string, style: Style): Word => ({ text, style, filled: 1 });
  switch (status.kind) {
    case 'trouble':
      return whole(large.trouble, theme.style.alarm);
    case 'paused':
      return whole(large.paused, theme.style.accent);
    case 'held':
      return whole(large.held, theme.style.accent);
    case 'question':
      return whole(large.question(status.question, status.pin), theme.style.accent);
    case 'judged':
    case 'again':
      return whole(verdict[status.verdict].toUpperCase(), theme.verdict[status.verdict]);
    case 'settling':
      return { text: large.settling, style: theme.style.accent, filled: status.settled };
    case 'charging':
      return { text: large.charging, style: theme.style.accent, filled: status.settled };
    case 'restless':
      return whole(large.restless, theme.verdict.wobble);
    case 'waiting':
      return status.board === null
        ? whole(large.touch, theme.style.faint)
        : whole(screen.board[status.board], theme.style.accent);
    case 'lift':
      return whole(large.lift, theme.style.quiet);
    case 'ready':
      return whole(large.ready(status.step, status.refused), theme.style.accent);
    case 'ground':
      return whole(large.ground(status.which, status.rests), theme.style.accent);
    case 'finished':
      return whole(large.finished, theme.style.accent);
  }
};
