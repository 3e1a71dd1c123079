// Everything between the reading and the tally: how it stands and the trace, or what must not be missed.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { selectStatus } from '../../core/select/status.js';
import { useSurroundings } from '../context.js';
import type { Snapshot } from '../live/screen-store.js';
import { Banner, messageFor } from './banner.js';
import { Row } from './rows.js';
import { Scale } from './scale.js';
import { Status } from './status.js';
import { Trace } from './trace.js';

/** The longest status word in large letters. */
const wordWidth = 44;
const statusRows = 3;
const bannerAtMost = 9;
const leastTrace = 5;

export const Body = ({
  snapshot: { state, trouble, trace },
  width,
  rows,
}: {
  readonly snapshot: Snapshot;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const status = selectStatus(state, trouble);
  if (messageFor(status, surroundings) !== null) {
    const bannerRows = rows >= bannerAtMost + leastTrace ? bannerAtMost : rows;
    const rest = rows - bannerRows;
    return (
      <Box flexDirection="column" height={rows} width={width} flexShrink={0}>
        <Banner status={status} width={width} rows={bannerRows} />
        {rest > 0 ? <Trace trace={trace} t={state.t} width={width} rows={rest} /> : null}
      </Box>
    );
  }
  const gap = rows > statusRows + 4 ? 1 : 0;
  const traceRows = rows - statusRows - gap;
  return (
    <Box flexDirection="column" height={rows} width={width} flexShrink={0}>
      <Box height={statusRows} flexShrink={0}>
        <Status state={state} trouble={trouble} width={wordWidth} />
        <Scale state={state} width={width - wordWidth - 2} />
      </Box>
      {gap === 1 ? <Row width={width} line={[]} /> : null}
      {traceRows >= 3 ? <Trace trace={trace} t={state.t} width={width} rows={traceRows} /> : null}
    </Box>
  );
};
