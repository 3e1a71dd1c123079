// What came of a drill: every question, the answer given, and the right one.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { shownPoints } from '../../core/drill/drill-lines.js';
import { type Marked, pointsOf } from '../../core/drill/drill-run.js';
import type { DrillView } from '../../session/drill-session.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span } from '../draw/line.js';
import { Rows } from '../parts/rows.js';

const fixedRows = 6;

export const DrillEnd = ({
  view,
  title,
  before,
  width,
  rows,
}: {
  readonly view: DrillView;
  readonly title: string;
  /** What earlier results say. */
  readonly before: string;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { theme, words } = surroundings;
  const { drill } = words;
  const room = Math.max(1, rows - fixedRows);
  // What was wrong is what there is to learn: it is kept where not everything fits.
  const wrong = view.marked.filter(({ points }) => points < 1);
  const listed = view.marked.length <= room ? view.marked : wrong;
  const lines: readonly Line[] = [
    [...chip(drill.title, theme.style.accent, theme), span(` ${title}`, theme.style.strong)],
    [],
    [
      span(' '),
      ...chip(
        drill.score(shownPoints(pointsOf(view)), view.questions.length),
        theme.style.notice,
        theme,
      ),
      span(`  ${before}`, theme.style.quiet),
    ],
    [],
    ...listed.slice(0, room).map((marked) => entryLine(marked, surroundings)),
    [],
    [span(' enter', theme.style.accent), span(` ${drill.leave}`, theme.style.quiet)],
  ];
  return <Rows width={width} lines={lines} height={rows} />;
};

const entryLine = ({ question, answer, points }: Marked, { theme, words }: Surroundings): Line => {
  const { drill } = words;
  const { kind, best } = question;
  const said = drill.choice(kind, answer);
  const right = best.map((choice) => drill.choice(kind, choice)).join(', ');
  const style = points === 1 ? theme.style.text : theme.style.accent;
  return [
    span(` ${points === 1 ? '+' : points === 0 ? '-' : '~'} `, style),
    span(`${cleanText(question.pin, 12)} ${cleanText(question.line, 20)}: `, theme.style.quiet),
    span(cleanText(said, 60), style),
    span(points === 1 ? '' : ` ${theme.line.arrow} ${cleanText(right, 60)}`, theme.style.strong),
  ];
};
