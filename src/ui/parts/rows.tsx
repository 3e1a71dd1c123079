// A block of lines on the screen, of a size given beforehand: cut at its edges, never wrapped, never squeezed.
//
// Ink measures every text it is given and remembers each for good; a live screen would grow without end. So it
// is given blank text of the block's size, always the same, and the lines are put in as it is written.
import { Box, Text, Transform } from 'ink';
import { type ReactElement, useContext } from 'react';
import { useSurroundings } from '../context.js';
import { cutLine, type Line, widthOf } from '../draw/line.js';
import { paint } from '../draw/paint.js';
import { StandInsContext } from '../live/stand-ins.js';

export interface RowsProps {
  readonly lines: readonly Line[];
  readonly width: number;
  /** What is too much is left out, what is missing stays empty. */
  readonly height?: number;
}

export const Rows = ({ lines, width, height = lines.length }: RowsProps): ReactElement | null => {
  const { theme } = useSurroundings();
  const standIns = useContext(StandInsContext);
  if (width < 1 || height < 1) return null;
  const blank = new Array<string>(height).fill(' '.repeat(width)).join('\n');
  const painted = lines.slice(0, height).map((line) => {
    const cut = cutLine(line, width, theme);
    return standIns?.standFor(paint(cut), widthOf(cut)) ?? paint(cut);
  });
  return (
    <Box width={width} height={height} flexShrink={0}>
      <Transform transform={(_, row) => painted[row] ?? ''}>
        <Text>{blank}</Text>
      </Transform>
    </Box>
  );
};

export const Row = ({ line, width }: { readonly line: Line; readonly width: number }) => (
  <Rows lines={[line]} width={width} />
);
