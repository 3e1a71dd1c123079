// The line under the probe, and at the right what comes next.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { offBoard, walksDonor } from '../../core/profile/donor.js';
import { selectNext, selectSubject } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import { probeInWords } from '../../core/words/describe-suspects.js';
import { useSurroundings } from '../context.js';
import { boardChip } from '../draw/board-chip.js';
import { chip } from '../draw/chip.js';
import { type Span, span, spread } from '../draw/line.js';
import { shownKey } from '../keys/key-map.js';
import { Row } from './rows.js';

const longestName = 60;

export const SubjectLine = ({
  state,
  width,
}: {
  readonly state: WalkState;
  readonly width: number;
}): ReactElement => {
  const { profile, theme, words, keys } = useSurroundings();
  const subject = selectSubject(state);
  const next = selectNext(state);
  const left: Span[] = [span(' ')];
  if (state.stage === 'ground-check') {
    left.push(span(words.screen.title.groundCheck, theme.style.strong));
  }
  if (state.probing !== null) {
    const place = cleanText(probeInWords(state.probing, words), longestName);
    left.push(
      ...chip(words.screen.probing, theme.style.notice, theme),
      span(` ${place}`, theme.style.strong),
    );
  } else if (subject !== null) {
    const { name: line } = offBoard(subject.planned.line);
    left.push(...boardChip(state, words, theme));
    const title = profile?.lines[line]?.title;
    left.push(span(cleanText(line, longestName), theme.style.strong));
    if (title !== undefined)
      left.push(span(`  ${cleanText(title, longestName)}`, theme.style.quiet));
  }
  const right: Span[] = [];
  if (state.probing !== null && next !== null) {
    const back = `${theme.line.arrow} ${words.screen.goesOnAt} `;
    right.push(
      span(back, theme.style.quiet),
      span(`${cleanText(next.pin, longestName)} `, theme.style.strong),
    );
  } else if (subject?.confirming) {
    const key = shownKey(keys, 'next') ?? words.screen.key.next;
    right.push(...chip(words.screen.confirm(key), theme.style.notice, theme), span(' '));
  } else if (next !== null) {
    const nextPin = walksDonor(state.plan)
      ? `${words.board[next.board ?? 'patient']} ${offBoard(next.pin).name}`
      : next.pin;
    right.push(
      span(
        `${subject?.judged ? `${words.screen.lift} ${theme.line.arrow} ` : ''}`,
        theme.style.quiet,
      ),
      span(`${words.screen.next} `, theme.style.quiet),
      span(cleanText(nextPin, longestName), theme.style.strong),
      span(` ${cleanText(offBoard(next.line).name, longestName)} `, theme.style.quiet),
    );
  }
  return <Row width={width} line={spread(left, right, width, theme)} />;
};
