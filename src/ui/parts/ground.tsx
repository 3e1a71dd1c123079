// The ground check: what to touch now, where pin 1 is, and what to have done before the first touch.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import type { WalkState } from '../../core/walk/state.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { type Line, span, wrapText } from '../draw/line.js';
import { printPicture } from '../draw/picture.js';
import { shownKey } from '../keys/key-map.js';
import { Rows } from './rows.js';

const longestText = 300;

export const Ground = ({
  state,
  width,
  rows,
}: {
  readonly state: WalkState;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const lines = [
    ...stepLines(state, surroundings, rows >= 6),
    ...placeLines(surroundings, width),
    ...cautionLines(surroundings, width),
  ];
  const { theme } = surroundings;
  const shown =
    lines.length <= rows
      ? lines
      : [...lines.slice(0, rows - 1), [span(` ${theme.line.more}`, theme.style.quiet)]];
  return <Rows lines={shown} height={rows} />;
};

const stepLines = (
  { grounds }: WalkState,
  { theme, words, keys }: Surroundings,
  roomy: boolean,
): readonly Line[] => {
  const which = grounds === 0 ? 1 : 2;
  const { screen } = words;
  const step = screen.groundStep(which);
  const drawing = roomy ? bigWord(screen.large.ground(which)) : null;
  const word =
    drawing === null
      ? []
      : printPicture(drawing, theme.unicode).map((text) => [span(` ${text}`, theme.style.accent)]);
  const skip = shownKey(keys, 'skip');
  return [
    ...word,
    [
      span(` ${screen.groundOf(which)}: `, theme.style.quiet),
      span(step, theme.style.strong),
      span(skip === null ? '' : `   ${screen.groundSkip(skip)}`, theme.style.quiet),
    ],
  ];
};

/** Which way round the connector lies. */
const placeLines = ({ profile, theme, words }: Surroundings, width: number): readonly Line[] => {
  const { pinOne, viewed } = profile?.connector ?? {};
  const said = [
    ...(pinOne === undefined ? [] : [`${words.screen.pinOne}: ${cleanText(pinOne, longestText)}`]),
    ...(viewed === undefined ? [] : [words.screen.viewed[viewed]]),
  ].join(', ');
  return said === ''
    ? []
    : wrapText(said, width - 2).map((text) => [span(` ${text}`, theme.style.text)]);
};

const cautionLines = ({ profile, theme, words }: Surroundings, width: number): readonly Line[] => {
  const cautions = profile?.cautions ?? [];
  if (cautions.length === 0) return [];
  const texts = cautions.flatMap((caution) =>
    wrapText(cleanText(caution, longestText), width - 4).map(
      (text, at): Line => [
        span(at === 0 ? ` ${theme.line.choice} ` : '   ', theme.style.accent),
        span(text, theme.style.text),
      ],
    ),
  );
  return [[span(` ${words.screen.beforeYouBegin}`, theme.style.accent)], ...texts];
};
