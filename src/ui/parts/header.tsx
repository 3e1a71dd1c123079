// The top line: which connector, where on it, and whether the readings are real.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { selectSubject } from '../../core/select/subject.js';
import { pinCount } from '../../core/walk/patient.js';
import type { WalkState } from '../../core/walk/state.js';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Span, span, spread } from '../draw/line.js';
import { Row } from './rows.js';

const longestTitle = 80;

export const Header = ({
  state,
  width,
}: {
  readonly state: WalkState;
  readonly width: number;
}): ReactElement => {
  const { profile, theme, words, simulated } = useSurroundings();
  const left: Span[] = [];
  if (profile !== null) {
    const { connector, title } = profile;
    left.push(
      span(` ${cleanText(connector.id, longestTitle)} `, theme.style.accent),
      span(` ${cleanText(connector.title ?? title, longestTitle)}`, theme.style.text),
    );
  }
  const index = selectSubject(state)?.planned.index ?? state.cursor;
  const { at, total } = pinCount(state.plan, index);
  const right: Span[] = [span(words.screen.place(at, total), theme.style.quiet), span(' ')];
  if (simulated) right.push(...chip(words.screen.simulated, theme.style.text, theme));
  return <Row width={width} line={spread(left, right, width, theme)} />;
};
