// The walk: where the probe is, what it reads, what that means.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { selectStatus } from '../../core/select/status.js';
import { useSurroundings } from '../context.js';
import type { Layout } from '../layout.js';
import { Banner, messageFor } from '../parts/banner.js';
import { Header } from '../parts/header.js';
import { KeyLine } from '../parts/key-line.js';
import { MeasureRule } from '../parts/measure-rule.js';
import { Reading } from '../parts/reading.js';
import { Row } from '../parts/rows.js';
import { Said } from '../parts/said.js';
import { Scale } from '../parts/scale.js';
import { Status } from '../parts/status.js';
import { Strip } from '../parts/strip.js';
import { SubjectLine } from '../parts/subject-line.js';
import { Tally } from '../parts/tally.js';
import { Trace } from '../parts/trace.js';
import type { Snapshot } from '../live/screen-store.js';

const wordWidth = 44;

export const WalkScreen = ({
  snapshot: { state, trouble, trace, mode, said },
  layout,
}: {
  readonly snapshot: Snapshot;
  readonly layout: Layout;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { width, stripRows, traceRows, airy } = layout;
  const status = selectStatus(state, trouble);
  const lower = 3 + traceRows + (airy ? 1 : 0);
  const gap = airy ? <Row line={[]} /> : null;
  return (
    <>
      <Header state={state} width={width} />
      <Strip state={state} width={width} rows={stripRows} />
      <MeasureRule state={state} width={width} />
      <SubjectLine state={state} width={width} />
      <Reading state={state} size="large" padded />
      {gap}
      {messageFor(status, surroundings) === null ? (
        <>
          <Box height={3} flexShrink={0}>
            <Box width={wordWidth} flexShrink={0}>
              <Status state={state} trouble={trouble} />
            </Box>
            <Scale state={state} width={width - wordWidth - 2} />
          </Box>
          {gap}
          {traceRows > 0 ? (
            <Trace trace={trace} t={state.t} width={width} rows={traceRows} />
          ) : null}
        </>
      ) : (
        <Banner status={status} width={width} rows={lower} />
      )}
      <Tally state={state} last={trace.marks.at(-1)} width={width} />
      <Said mode={mode} said={said} />
      <KeyLine state={state} width={width} />
    </>
  );
};
