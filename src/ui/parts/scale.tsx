// What is expected of the line and where the reading lies between its limits.
import type { ReactElement } from 'react';
import { siUnit } from '../../core/reading.js';
import { selectCompared } from '../../core/select/live.js';
import { expectedAt, selectSubject } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import { useSurroundings } from '../context.js';
import { drawRail } from '../draw/rail.js';
import { Rows } from './rows.js';

export const Scale = ({
  state,
  width,
}: {
  readonly state: WalkState;
  readonly width: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const subject = selectSubject(state);
  if (subject === null) return <Rows width={width} lines={[]} height={3} />;
  const view = {
    expected: expectedAt(state, subject),
    unit: siUnit(state.plan.function),
    value: selectCompared(state),
    style: subject.judged ? theme.verdict[subject.record.verdict] : theme.style.accent,
    width,
  };
  return <Rows width={width} lines={drawRail(view, words, theme)} height={3} />;
};
