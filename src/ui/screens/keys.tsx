// All keys and what they do.
import type { ReactElement } from 'react';
import { screenActs } from '../../core/words/screen-words.js';
import { useSurroundings } from '../context.js';
import { type Line, padTo, span, widthOf } from '../draw/line.js';
import type { Layout } from '../layout.js';
import { Row, Rows } from '../parts/rows.js';

const keyColumns = 16;

export const KeysScreen = ({
  layout: { width, height },
}: {
  readonly layout: Layout;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const { screen } = words;
  const tall = height >= screenActs.length + 3;
  const lines = screenActs.map((act): Line => {
    const names = keys[act].join(' ');
    const name = padTo([span(` ${names}`, theme.style.accent)], tall ? keyColumns : 10);
    const means = tall ? screen.keyMeans[act] : screen.key[act];
    return [...name, span(` ${means}`, theme.style.text)];
  });
  const rows = tall ? lines : inColumns(lines, width);
  return (
    <>
      <Row width={width} line={[span(` ${screen.title.keys}`, theme.style.strong)]} />
      {tall ? <Row width={width} line={[]} /> : null}
      <Rows width={width} lines={rows} height={height - (tall ? 3 : 2)} />
      <Row width={width} line={[span(` ${screen.anyKeyBack}`, theme.style.quiet)]} />
    </>
  );
};

/** Two columns where one is too tall. */
const inColumns = (lines: readonly Line[], width: number): readonly Line[] => {
  const half = Math.ceil(lines.length / 2);
  const column = Math.floor(width / 2);
  return lines.slice(0, half).map((left, at) => {
    const right = lines[half + at] ?? [];
    return [...padTo(left, Math.max(column, widthOf(left) + 1)), ...right];
  });
};
