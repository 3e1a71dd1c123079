// The walk and the ground check before it: where the probe is, what it reads, what that means.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import type { Layout } from '../layout.js';
import type { Snapshot } from '../live/screen-store.js';
import { Body } from '../parts/body.js';
import { BottomLine } from '../parts/bottom-line.js';
import { Ground } from '../parts/ground.js';
import { Said } from '../parts/said.js';
import { Side } from '../parts/side.js';
import { Tally } from '../parts/tally.js';
import { WalkHead } from '../parts/walk-head.js';

export interface WalkScreenProps {
  readonly snapshot: Snapshot;
  readonly layout: Layout;
}

export const WalkScreen = ({ snapshot, layout }: WalkScreenProps): ReactElement => {
  const { state, trace } = snapshot;
  const { width, side, bodyRows } = layout;
  return (
    <>
      <WalkHead state={state} layout={layout} />
      <Box height={bodyRows} flexShrink={0} gap={2}>
        <LowerPart
          snapshot={snapshot}
          width={side === 0 ? width : width - side - 3}
          rows={bodyRows}
        />
        {side === 0 ? null : <Side state={state} width={side} rows={bodyRows} />}
      </Box>
      <Tally state={state} last={trace.marks.at(-1)} width={width} />
      <Said snapshot={snapshot} width={width} />
      <BottomLine snapshot={snapshot} width={width} />
    </>
  );
};

const LowerPart = ({
  snapshot,
  width,
  rows,
}: {
  readonly snapshot: Snapshot;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const { state, trouble } = snapshot;
  const plainGround =
    (state.stage === 'ground-check' || state.ready !== null) &&
    trouble === null &&
    state.paused === null &&
    state.hold === null;
  return plainGround ? (
    <Ground state={state} width={width} rows={rows} />
  ) : (
    <Body snapshot={snapshot} width={width} rows={rows} />
  );
};
