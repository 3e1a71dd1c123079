// Lines on the screen: one row each, cut at the edge, never wrapped, never squeezed.
import { Box, Text } from 'ink';
import type { ReactElement } from 'react';
import { useSurroundings } from '../context.js';
import { type Line, showable } from '../draw/line.js';

export const Row = ({ line }: { readonly line: Line }): ReactElement => {
  const { theme } = useSurroundings();
  return (
    <Box height={1} flexShrink={0}>
      <Text wrap="truncate">
        {showable(line, theme).map(({ text, style }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a span has no identity but its place
          <Text key={index} {...style}>
            {text}
          </Text>
        ))}
      </Text>
    </Box>
  );
};

/** Exactly `height` rows: what is too much is left out, what is missing stays empty. */
export const Rows = ({
  lines,
  height = lines.length,
}: {
  readonly lines: readonly Line[];
  readonly height?: number;
}): ReactElement => (
  <Box flexDirection="column" height={height} flexShrink={0} overflow="hidden">
    {lines.slice(0, height).map((line, index) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a row has no identity but its place
      <Row key={index} line={line} />
    ))}
  </Box>
);
