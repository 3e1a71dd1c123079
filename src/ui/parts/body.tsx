// Everything between the reading and the tally: how it stands and the trace, or what must not be missed.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { selectChain } from '../../core/select/chain.js';
import { selectStatus } from '../../core/select/status.js';
import { selectSubject } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { drawChain } from '../draw/chain-lines.js';
import type { Line } from '../draw/line.js';
import { nextProbeLines } from '../draw/next-probe-line.js';
import type { Snapshot } from '../live/screen-store.js';
import { Banner, messageFor } from './banner.js';
import { Row, Rows } from './rows.js';
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
  const free = rows - statusRows - gap;
  const chain = chainLines(state, width, surroundings);
  const chainRows =
    chain.length > 0 && free - chain.length - 1 >= leastTrace ? chain.length + 1 : 0;
  const traceRows = free - chainRows;
  return (
    <Box flexDirection="column" height={rows} width={width} flexShrink={0}>
      <Box height={statusRows} flexShrink={0}>
        <Status state={state} trouble={trouble} width={wordWidth} />
        <Scale state={state} width={width - wordWidth - 2} />
      </Box>
      {gap === 1 ? <Row width={width} line={[]} /> : null}
      {chainRows > 0 ? <Rows lines={chain} width={width} height={chainRows} /> : null}
      {traceRows >= 3 ? <Trace trace={trace} t={state.t} width={width} rows={traceRows} /> : null}
    </Box>
  );
};

/** The chain of the line under the probe, where that line does not read normal. */
const chainLines = (
  state: WalkState,
  width: number,
  surroundings: Surroundings,
): readonly Line[] => {
  const { words, theme } = surroundings;
  const subject = selectSubject(state);
  if (subject === null || ['normal', 'unread'].includes(subject.record.verdict)) return [];
  const chain = selectChain(state, subject.planned.index);
  return chain === null
    ? []
    : [...drawChain(chain, width, words, theme), ...nextProbeLines(state, surroundings)];
};
