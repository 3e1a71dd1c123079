// The question with its answers, or the explanation of the last answer.
import type { ReactElement } from 'react';
import { type AskedLines, linesOfMark, linesOfQuestion } from '../../core/drill/drill-lines.js';
import type { WalkState } from '../../core/walk/state.js';
import type { DrillView } from '../../session/drill-session.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, widthOf, wrapText } from '../draw/line.js';
import { Rows } from '../parts/rows.js';

export interface DrillPanelProps {
  readonly view: DrillView;
  readonly state: WalkState;
  readonly width: number;
  readonly rows: number;
}

export const DrillPanel = ({ view, state, width, rows }: DrillPanelProps): ReactElement => {
  const surroundings = useSurroundings();
  const { words } = surroundings;
  const { asked } = view;
  const lines =
    asked === null
      ? explained(view, state, { width, rows }, surroundings)
      : askedLines(linesOfQuestion(asked, state, words), width, rows, surroundings);
  return <Rows width={width} lines={lines} height={rows} />;
};

/** Choices stand one under the other, or side by side where there is no room for that. */
const askedLines = (
  { sight, ask, choices }: AskedLines,
  width: number,
  rows: number,
  { theme }: Surroundings,
): readonly Line[] => {
  const entry = (choice: string, at: number): Line => [
    ...chip(String(at + 1), theme.style.accent, theme),
    span(` ${choice}   `, theme.style.text),
  ];
  const head: readonly Line[] = [
    ...wrapText(sight, width - 2).map((text): Line => [span(` ${text}`, theme.style.text)]),
    [span(` ${ask}`, theme.style.strong)],
  ];
  const entries = choices.map(entry);
  const below = entries.map((line): Line => [span('  '), ...line]);
  if (head.length + below.length + 1 <= rows) return [...head, [], ...below];
  return [...head, ...sideBySide(entries, width)];
};

const sideBySide = (entries: readonly Line[], width: number): readonly Line[] => {
  const lines: Line[] = [];
  for (const entry of entries) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(last) + widthOf(entry) <= width) {
      lines[lines.length - 1] = [...last, ...entry];
    } else lines.push([span(' '), ...entry]);
  }
  return lines;
};

const explained = (
  { marked }: DrillView,
  state: WalkState,
  { width, rows }: Pick<DrillPanelProps, 'width' | 'rows'>,
  { theme, words }: Surroundings,
): readonly Line[] => {
  const last = marked.at(-1);
  if (last === undefined) return [];
  const [mark, why] = linesOfMark(last, state, words);
  const style = last.points === 0 ? theme.style.alarm : theme.style.notice;
  const { kind } = last.question;
  const text = wrapText(why, width - 2).map((line): Line => [span(` ${line}`, theme.style.text)]);
  // Where not everything fits, what to do next does.
  const gap: readonly Line[] = text.length + 4 <= rows ? [[]] : [];
  return [
    [
      span(' '),
      ...chip(mark, style, theme),
      span(` ${words.drill.choice(kind, last.answer)}`, theme.style.quiet),
    ],
    ...gap,
    ...text.slice(0, rows - 2),
    ...gap,
    [span(' enter', theme.style.accent), span(` ${words.drill.goOn}`, theme.style.quiet)],
  ];
};
