// A rule across the screen that says what is measured: function, range, which lead walks.
import type { ReactElement } from 'react';
import { formatReading } from '../../core/measure/format-reading.js';
import { siUnit } from '../../core/reading.js';
import type { WalkState } from '../../core/walk/state.js';
import { useSurroundings } from '../context.js';
import { cutLine, padTo, span, widthOf } from '../draw/line.js';
import { Row } from './rows.js';

export const MeasureRule = ({
  state,
  width,
}: {
  readonly state: WalkState;
  readonly width: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const { plan, reading } = state;
  const range = reading !== null && 'range' in reading ? reading.range : undefined;
  const said = [
    words.measure[plan.function],
    ...(range === undefined
      ? []
      : [words.screen.range(formatReading(range, null, siUnit(plan.function)))]),
    words.polarity[plan.polarity],
  ].join(` ${theme.line.dot} `);
  const { rule } = theme.line;
  const line = cutLine(
    [span(`${rule}${rule} `, theme.style.faint), span(said, theme.style.quiet), span(' ')],
    width,
    theme,
  );
  const rest = rule.repeat(Math.max(0, width - widthOf(line)));
  return <Row width={width} line={padTo([...line, span(rest, theme.style.faint)], width)} />;
};
