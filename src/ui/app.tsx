// Chooses the screen by what the walk and the keys are doing, and holds it within the terminal.
import { type ReactElement, useSyncExternalStore } from 'react';
import { selectPress } from '../core/select/press.js';
import { selectStrip } from '../core/select/strip.js';
import type { Surroundings } from './context.js';
import { planLayout } from './layout.js';
import type { ScreenStore } from './live/screen-store.js';
import type { TerminalSize } from './live/terminal-size.js';
import { WholeScreen } from './parts/whole-screen.js';
import { KeysScreen } from './screens/keys.js';
import { LineScreen } from './screens/line.js';
import { PressScreen } from './screens/press.js';
import { PressSmallScreen } from './screens/press-small.js';
import { ReviewScreen } from './screens/review.js';
import { SmallScreen } from './screens/small.js';
import { WalkScreen, type WalkScreenProps } from './screens/walk.js';

export interface AppProps {
  readonly store: ScreenStore;
  readonly size: TerminalSize;
  readonly surroundings: Surroundings;
}

export const App = ({ store, size, surroundings }: AppProps): ReactElement => {
  const snapshot = useSyncExternalStore(store.subscribe, store.snapshot);
  const { columns, rows } = useSyncExternalStore(size.subscribe, size.snapshot);
  const layout = planLayout(columns, rows, selectStrip(snapshot.state).length);
  return (
    <WholeScreen surroundings={surroundings} width={layout.width} height={layout.height}>
      <Screen snapshot={snapshot} layout={layout} />
    </WholeScreen>
  );
};

const Screen = ({ snapshot, layout }: WalkScreenProps): ReactElement => {
  const { mode } = snapshot;
  if (layout.form === 'line') return <LineScreen snapshot={snapshot} layout={layout} />;
  if (mode.mode === 'keys') return <KeysScreen layout={layout} replay={snapshot.replay !== null} />;
  const view = mode.mode === 'review' ? null : selectPress(snapshot.state);
  if (view !== null) {
    const Press = layout.form === 'small' ? PressSmallScreen : PressScreen;
    return <Press snapshot={snapshot} layout={layout} view={view} />;
  }
  const review = reviewChoice(snapshot);
  if (review !== null) return <ReviewScreen snapshot={snapshot} layout={layout} choice={review} />;
  return layout.form === 'small' ? (
    <SmallScreen snapshot={snapshot} layout={layout} />
  ) : (
    <WalkScreen snapshot={snapshot} layout={layout} />
  );
};

/** A finished walk has nothing else to show than its review, whatever is being typed. */
const reviewChoice = ({ mode, state }: WalkScreenProps['snapshot']): number | null => {
  if (mode.mode === 'review') return mode.choice;
  if (state.probing !== null) return null;
  return state.stage === 'finished' || state.stage === 'closed' ? 0 : null;
};
