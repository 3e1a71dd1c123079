// The windows of a press test along the trace's time: filled while the part is to be pressed, a rule while it is
// to be let go, and below each what the line showed in it.

import type { SeenWindow, Shown } from '../../core/select/press.js';
import type { Verdict } from '../../core/verdict.js';
import type { PressScreenWords } from '../../core/words/press-screen-words.js';
import type { Style, Theme } from '../theme.js';
import { joinCells, type StyledCell } from './chart.js';
import { columnsOf } from './columns.js';
import type { Line } from './line.js';

/** What a window showed looks as the verdict of that name. */
export const verdictOf = (shown: Shown): Verdict => (shown === 'unclear' ? 'unsure' : shown);

/** @param columnOf the column of cells of a time; may lie outside the band. */
export const drawPressBand = (
  windows: readonly SeenWindow[],
  columnOf: (t: number) => number,
  width: number,
  words: PressScreenWords,
  theme: Theme,
): readonly [band: Line, results: Line] => {
  const band = blankCells(width);
  const results = blankCells(width);
  for (const { cue, fromS, toS, shown } of windows) {
    const from = Math.max(0, columnOf(fromS));
    const to = Math.min(width, toS === null ? width : columnOf(toS));
    if (to <= from) continue;
    const pressed = cue === 'press';
    const style = pressed ? theme.style.accent : theme.style.faint;
    const fill = pressed ? theme.line.frame.side : theme.line.rule;
    for (let at = from; at < to; at += 1) band[at] = { text: fill, style };
    const label = pressed ? ` ${words.cue.press} ` : ` ${words.cue.release} `;
    put(band, from, to, label, pressed ? theme.style.notice : theme.style.quiet);
    if (shown === null) continue;
    const verdict = verdictOf(shown);
    const symbol = theme.symbol[verdict];
    const result = `${symbol} ${words.shown[shown]}`;
    put(results, from, to, fits(result, from, to) ? result : symbol, theme.verdict[verdict]);
  }
  return [joinCells(band), joinCells(results)];
};

const blankCells = (width: number): StyledCell[] =>
  Array.from({ length: width }, () => ({ text: ' ', style: blank }));

const blank: Style = {};

const fits = (text: string, from: number, to: number): boolean => columnsOf(text) < to - from;

/** Writes a text into the middle of its stretch, where there is room for it. */
const put = (cells: StyledCell[], from: number, to: number, text: string, style: Style): void => {
  if (!fits(text, from, to)) return;
  const start = from + ((to - from - columnsOf(text)) >> 1);
  [...text].forEach((character, at) => {
    cells[start + at] = { text: character, style };
  });
};
