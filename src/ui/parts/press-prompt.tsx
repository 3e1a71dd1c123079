// What to do with the tool, in letters to be read from afar: a filled block to press, bare letters to let go.
import type { ReactElement } from 'react';
import type { PressView } from '../../core/select/press.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { type Line, span } from '../draw/line.js';
import { doubled, type Picture, printPicture, stamped, widthOfPicture } from '../draw/picture.js';
import type { Style } from '../theme.js';
import { verdictOfFinding } from './press-style.js';
import { Rows } from './rows.js';

export const PressPrompt = ({
  view,
  width,
  rows,
}: {
  readonly view: PressView;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { texts, style, filled } = promptOf(view, surroundings);
  const drawings = texts.flatMap((text) => sizesOf(text, filled));
  const drawing = drawings.find(
    (picture) => widthOfPicture(picture) < width && picture.length <= 2 * rows,
  );
  const lines: readonly Line[] =
    drawing === undefined
      ? [[span(texts.at(-1) ?? '', { ...style, inverse: filled })]]
      : printPicture(drawing, surroundings.theme.unicode).map((text) => [span(text, style)]);
  const lead = new Array<Line>((rows - lines.length) >> 1).fill([]);
  return (
    <Rows
      width={width}
      lines={[...lead, ...lines].map((line) => [span(' '), ...line])}
      height={rows}
    />
  );
};

interface Prompt {
  /** The word, and shorter ones for less room. */
  readonly texts: readonly string[];
  readonly style: Style;
  readonly filled: boolean;
}

const promptOf = (
  { prompt, latest, free, traced }: PressView,
  { theme, words }: Surroundings,
): Prompt => {
  const { large, findingLarge } = words.screen.press;
  switch (prompt) {
    case 'press':
      return { texts: [large.press], style: theme.style.accent, filled: true };
    case 'release':
      return { texts: [large.release], style: theme.style.strong, filled: false };
    case 'hold-still':
      return { texts: [large.holdStill, large.hold], style: theme.style.quiet, filled: false };
    case 'reads':
      return {
        texts: [large.reads],
        style: theme.verdict.normal,
        filled: free?.pressing === true,
      };
    case 'open':
      return { texts: [large.open], style: theme.verdict.open, filled: free?.pressing === true };
    case 'done': {
      if (traced !== null) {
        return { texts: [large.done], style: theme.style.accent, filled: false };
      }
      const finding = latest?.result?.finding ?? 'inconclusive';
      const style = theme.verdict[verdictOfFinding[finding]];
      return { texts: [findingLarge[finding]], style, filled: false };
    }
  }
};

/** The drawings of a word, the largest first; none where a letter is missing. */
const sizesOf = (text: string, filled: boolean): readonly Picture[] => {
  const word = bigWord(text);
  if (word === null) return [];
  return filled
    ? [stamped(doubled(word), { x: 4, y: 4 }, 2), stamped(word, { x: 3, y: 2 }, 1), word]
    : [doubled(word), word];
};
