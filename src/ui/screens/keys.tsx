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

const keyColumns = 16;

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
  const lines = entries.map(({ names, means, label }): Line => {
    const name = padTo([span(` ${names.join(' ')}`, theme.style.accent)], tall ? keyColumns : 10);
    return [...name, span(` ${tall ? means : label}`, theme.style.text)];
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

/** Two columns where one is too tall. */
const inColumns = (lines: readonly Line[], width: number): readonly Line[] => {
  const half = Math.ceil(lines.length / 2);
  const column = Math.floor(width / 2);
  return lines.slice(0, half).map((left, at) => {
    const right = lines[half + at] ?? [];
    return [...padTo(left, Math.max(column, widthOf(left) + 1)), ...right];
  });
};
