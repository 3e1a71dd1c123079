// What stands above all else while pins are walked: the connector, the place in it, the line and its live reading.
import type { ReactElement } from 'react';
import type { WalkState } from '../../core/walk/state.js';
import type { Layout } from '../layout.js';
import { Header } from './header.js';
import { MeasureRule } from './measure-rule.js';
import { Reading } from './reading.js';
import { Row } from './rows.js';
import { Strip } from './strip.js';
import { SubjectLine } from './subject-line.js';

export const WalkHead = ({
  state,
  layout: { width, form, stripRows, airy },
}: {
  readonly state: WalkState;
  readonly layout: Layout;
}): ReactElement => {
  const large = form === 'large';
  const gap = airy ? <Row width={width} line={[]} /> : null;
  return (
    <>
      <Header state={state} width={width} />
      {large ? gap : null}
      <Strip state={state} width={width} rows={stripRows} />
      <MeasureRule state={state} width={width} />
      <SubjectLine state={state} width={width} />
      {large ? gap : null}
      <Reading state={state} width={width} large={large} />
      {gap}
    </>
  );
};
