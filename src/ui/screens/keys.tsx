// All keys and what they do.
import type { ReactElement } from 'react';
import { replayActs } from '../../core/words/replay-words.js';
import { screenActs } from '../../core/words/screen-words.js';
import type { Words } from '../../core/words/words.js';
import { useSurroundings } from '../context.js';
import { type Line, padTo, span, widthOf } from '../draw/line.js';
import type { KeyMap } from '../keys/key-map.js';
import { replayKeys } from '../keys/replay-keys.js';
import type { Layout } from '../layout.js';
import { Row, Rows } from '../parts/rows.js';

/** Columns of a key's names beside one column of meanings, and two; with more, one name is enough. */
const nameWidths = [16, 10];
const shortestName = 2;

export const KeysScreen = ({
  layout: { width, height },
  replay,
}: {
  readonly layout: Layout;
  readonly replay: boolean;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const { screen } = words;
  const entries = replay ? replayEntries(words, keys) : walkEntries(words, keys);
  const tall = height >= entries.length + 3;
  const columns = tall ? 1 : Math.max(2, Math.ceil(entries.length / (height - 2)));
  const nameWidth = nameWidths[columns - 1] ?? shortestName;
  const lines = entries.map(({ names, means, label }): Line => {
    const shown = columns > 2 ? names.slice(0, 1) : names;
    const name = padTo([span(` ${shown.join(' ')}`, theme.style.accent)], nameWidth);
    return [...name, span(` ${tall ? means : label}`, theme.style.text)];
  });
  const rows = inColumns(lines, columns, width);
  return (
    <>
      <Row width={width} line={[span(` ${screen.title.keys}`, theme.style.strong)]} />
      {tall ? <Row width={width} line={[]} /> : null}
      <Rows width={width} lines={rows} height={height - (tall ? 3 : 2)} />
      <Row width={width} line={[span(` ${screen.anyKeyBack}`, theme.style.quiet)]} />
    </>
  );
};

interface Entry {
  readonly names: readonly string[];
  readonly means: string;
  readonly label: string;
}

const walkEntries = ({ screen }: Words, keys: KeyMap): readonly Entry[] =>
  screenActs.map((act) => ({
    names: keys[act],
    means: screen.keyMeans[act],
    label: screen.key[act],
  }));

const replayEntries = ({ replay }: Words, keys: KeyMap): readonly Entry[] =>
  replayActs.map((act) => ({
    names: replayKeys(keys)[act],
    means: replay.keyMeans[act],
    label: replay.key[act],
  }));

/** As many columns as it takes, read downwards. */
const inColumns = (lines: readonly Line[], columns: number, width: number): readonly Line[] => {
  const height = Math.ceil(lines.length / columns);
  const column = Math.floor(width / columns);
  return lines
    .slice(0, height)
    .map((_, row) =>
      Array.from({ length: columns }, (__, at) => lines[at * height + row] ?? []).flatMap((line) =>
        padTo(line, Math.max(column, widthOf(line) + 1)),
      ),
    );
};
