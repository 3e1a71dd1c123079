// Which of two boards the probe belongs on, as a chip that is read at arm's length; nothing where there is but one.
import { selectBoard } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import type { Words } from '../../core/words/words.js';
import type { Theme } from '../theme.js';
import { chip } from './chip.js';
import { type Span, span } from './line.js';

export const boardChip = (state: WalkState, words: Words, theme: Theme): readonly Span[] => {
  const board = selectBoard(state);
  if (board === null) return [];
  const style = board === 'donor' ? theme.style.notice : theme.style.accent;
  return [...chip(words.screen.board[board], style, theme), span(' ')];
};
