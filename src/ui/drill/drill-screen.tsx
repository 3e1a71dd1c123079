// The walk's screen in a drill: as it was, and in place of how it stands, what is asked.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import type { DrillView } from '../../session/drill-session.js';
import type { Layout } from '../layout.js';
import type { Snapshot } from '../live/screen-store.js';
import { SmallReading } from '../parts/reading.js';
import { Trace } from '../parts/trace.js';
import { WalkHead } from '../parts/walk-head.js';
import { DrillLine } from './drill-line.js';
import { DrillPanel } from './drill-panel.js';

/** Columns beside which a question still reads well. */
const panelColumns = 64;
const leastTrace = 30;
const panelRows = 9;
/** Rows of the small reading. */
const readingRows = 3;

export interface DrillScreenProps {
  readonly snapshot: Snapshot;
  readonly view: DrillView;
  readonly layout: Layout;
  /** Leaving was asked for once. */
  readonly leaving: boolean;
}

export const DrillScreen = ({
  snapshot,
  view,
  layout,
  leaving,
}: DrillScreenProps): ReactElement => {
  const { state, replay } = snapshot;
  const { width, height, form, bodyRows } = layout;
  const last =
    replay === null ? null : (
      <DrillLine view={view} replay={replay} leaving={leaving} width={width} />
    );
  if (form === 'line' || form === 'small') {
    // The question says what is read: where there is little room it stands alone.
    const alone = isSpeaking(view);
    const rows = height - 1 - (alone ? 0 : readingRows);
    return (
      <>
        {alone ? null : <SmallReading state={state} width={width} />}
        <Below snapshot={snapshot} view={view} width={width} rows={rows} />
        {last}
      </>
    );
  }
  // The walk's two lines of tally and words are the panel's here.
  return (
    <>
      <WalkHead state={state} layout={layout} />
      <Below snapshot={snapshot} view={view} width={width} rows={bodyRows + 2} />
      {last}
    </>
  );
};

const isSpeaking = ({ asked, explaining }: DrillView): boolean => asked !== null || explaining;

const Below = ({
  snapshot: { state, trace },
  view,
  width,
  rows,
}: {
  readonly snapshot: Snapshot;
  readonly view: DrillView;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  if (!isSpeaking(view)) return <Trace trace={trace} t={state.t} width={width} rows={rows} />;
  const beside = width >= panelColumns + leastTrace;
  if (beside) {
    return (
      <Box height={rows} flexShrink={0} gap={2}>
        <DrillPanel view={view} state={state} width={panelColumns} rows={rows} />
        <Trace trace={trace} t={state.t} width={width - panelColumns - 2} rows={rows} />
      </Box>
    );
  }
  const under = rows >= panelRows + 4;
  return (
    <Box flexDirection="column" height={rows} flexShrink={0}>
      <DrillPanel view={view} state={state} width={width} rows={under ? panelRows : rows} />
      {under ? <Trace trace={trace} t={state.t} width={width} rows={rows - panelRows} /> : null}
    </Box>
  );
};
