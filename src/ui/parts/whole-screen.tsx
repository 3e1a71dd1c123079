// What every screen is drawn in: its surroundings, and a box that lets nothing reach beyond the terminal.
import { Box } from 'ink';
import type { ReactElement, ReactNode } from 'react';
import { type Surroundings, SurroundingsContext } from '../context.js';

interface WholeScreenProps {
  readonly surroundings: Surroundings;
  readonly width: number;
  readonly height: number;
  readonly children: ReactNode;
}

export const WholeScreen = ({
  surroundings,
  width,
  height,
  children,
}: WholeScreenProps): ReactElement => (
  <SurroundingsContext.Provider value={surroundings}>
    <Box flexDirection="column" width={width} height={height} overflowY="hidden">
      {children}
    </Box>
  </SurroundingsContext.Provider>
);
