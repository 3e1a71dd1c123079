// Chooses the screen by what the walk and the keys are doing, and holds it within the terminal.
import { Box } from 'ink';
import { type ReactElement, useSyncExternalStore } from 'react';
import { selectStrip } from '../core/select/strip.js';
import { type Surroundings, SurroundingsContext } from './context.js';
import { planLayout } from './layout.js';
import { WalkScreen } from './screens/walk.js';
import type { ScreenStore } from './live/screen-store.js';
import type { TerminalSize } from './live/terminal-size.js';

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
    <SurroundingsContext.Provider value={surroundings}>
      <Box flexDirection="column" width={layout.width} height={layout.height} overflow="hidden">
        <WalkScreen snapshot={snapshot} layout={layout} />
      </Box>
    </SurroundingsContext.Provider>
  );
};
