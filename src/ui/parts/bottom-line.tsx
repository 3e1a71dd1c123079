// The last line of a screen: the keys of a walk, or where a played session stands.
import type { ReactElement } from 'react';
import type { Snapshot } from '../live/screen-store.js';
import { KeyLine } from './key-line.js';
import { ReplayLine } from './replay-line.js';

export const BottomLine = ({
  snapshot: { state, replay },
  width,
}: {
  readonly snapshot: Snapshot;
  readonly width: number;
}): ReactElement =>
  replay === null ? (
    <KeyLine state={state} width={width} />
  ) : (
    <ReplayLine view={replay} width={width} />
  );
