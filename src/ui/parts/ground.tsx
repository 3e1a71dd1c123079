// The ground check: what to touch now, where pin 1 is, and what to have done before the first touch.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { walksDonor } from '../../core/profile/donor.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownReference } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { bigWord } from '../draw/big-text.js';
import { type Line, span, wrapText } from '../draw/line.js';
import { printPicture } from '../draw/picture.js';
import type { Theme } from '../theme.js';
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
  const roomy = rows >= 9;
  const lines = [...stepLines(state, surroundings, roomy), ...placeLines(surroundings, width)];
  return (
    <Rows
      width={width}
      lines={[...lines, ...cautionLines(surroundings, width, rows - lines.length)]}
      height={rows}
    />
  );
};

const stepLines = (
  state: WalkState,
  { theme, words }: Surroundings,
  roomy: boolean,
): readonly Line[] => {
  const { screen } = words;
  if (state.ready !== null) {
    const { step, refused } = state.ready;
    return wordAndStep(
      screen.large.ready(step, refused),
      screen.readyOf(step),
      screen.readyStep(step, shownReference(state)),
      roomy,
      theme,
    );
  }
  const rests = state.grounds > 0 && state.contact.rest !== null;
  const which = state.grounds === 0 ? 1 : 2;
  return wordAndStep(
    screen.large.ground(which, rests),
    screen.groundOf(which),
    screen.groundStep(which, walksDonor(state.plan)),
    roomy,
    theme,
  );
};

const wordAndStep = (
  large: string,
  of: string,
  step: string,
  roomy: boolean,
  theme: Theme,
): readonly Line[] => {
  const drawing = roomy ? bigWord(large) : null;
  const word =
    drawing === null
      ? []
      : printPicture(drawing, theme.unicode).map((text) => [span(` ${text}`, theme.style.accent)]);
  return [...word, [span(` ${of}: `, theme.style.quiet), span(step, theme.style.strong)]];
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

/** As many whole cautions as there is room for, and how many more there are. */
const cautionLines = (
  { profile, theme, words, simulated }: Surroundings,
  width: number,
  rows: number,
): readonly Line[] => {
  const cautions = [
    ...(simulated ? [] : [words.context.groundedLead]),
    ...(profile?.cautions ?? []),
  ];
  if (cautions.length === 0) return [];
  const lines: Line[] = [[span(` ${words.screen.beforeYouBegin}`, theme.style.accent)]];
  for (const [at, caution] of cautions.entries()) {
    const texts = wrapText(cleanText(caution, longestText), width - 4);
    const last = at === cautions.length - 1;
    if (lines.length + texts.length + (last ? 0 : 1) > rows) {
      lines.push([span(`   ${words.screen.more(cautions.length - at)}`, theme.style.quiet)]);
      break;
    }
    texts.forEach((text, part) => {
      const lead = part === 0 ? ` ${theme.line.choice} ` : '   ';
      lines.push([span(lead, theme.style.accent), span(text, theme.style.text)]);
    });
  }
  return lines;
};
