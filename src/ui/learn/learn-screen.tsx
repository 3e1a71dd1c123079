// The page on which keys are learnt: every act with its keys, the one asked for in front.
import type { ReactElement } from 'react';
import { screenActs } from '../../core/words/screen-words.js';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, padTo, span } from '../draw/line.js';
import { Row, Rows } from '../parts/rows.js';
import type { Learning } from './learn-keys.js';

const keyColumns = 18;
/** Title, gap, question, hint, refusal. */
const fixedRows = 5;

export const LearnScreen = ({
  learning: { at, learnt, refused },
  width,
  height,
}: {
  readonly learning: Learning;
  readonly width: number;
  readonly height: number;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const { learner, keyMeans } = words.screen;
  const act = screenActs[at];
  const room = Math.max(1, height - fixedRows);
  const from = Math.max(0, Math.min(screenActs.length - room, at - (room >> 1)));
  const lines = screenActs.slice(from, from + room).map((other): Line => {
    const name = (learnt[other] ?? keys[other]).join(' ');
    const asked = other === act;
    return [
      span(asked ? ` ${theme.line.choice} ` : '   ', theme.style.accent),
      ...padTo(
        [span(name, learnt[other] === undefined ? theme.style.quiet : theme.style.accent)],
        keyColumns,
      ),
      span(keyMeans[other], asked ? theme.style.strong : theme.style.text),
    ];
  });
  const why =
    refused === null
      ? null
      : refused.why === 'taken'
        ? learner.taken(refused.name, keyMeans[refused.by])
        : learner.never(refused.name);
  return (
    <>
      <Row width={width} line={[span(` ${learner.title}`, theme.style.strong)]} />
      <Row width={width} line={[]} />
      <Rows width={width} lines={lines} height={Math.min(room, lines.length)} />
      <Row
        width={width}
        line={
          act === undefined ? [] : chip(learner.press(keyMeans[act]), theme.style.notice, theme)
        }
      />
      <Row width={width} line={[span(` ${learner.hint}`, theme.style.quiet)]} />
      <Row width={width} line={why === null ? [] : [span(` ${why}`, theme.style.accent)]} />
    </>
  );
};
