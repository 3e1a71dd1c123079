// Where the walk stands, in one line of words: for a screen reader, on request.

import { walksDonor } from '../../core/profile/donor.js';
import { siUnit } from '../../core/reading.js';
import { selectLive } from '../../core/select/live.js';
import { expectedAt, selectSubject } from '../../core/select/subject.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownExpected } from '../../core/words/shown.js';
import type { Words } from '../../core/words/words.js';

export const placeLine = (state: WalkState, words: Words): string => {
  const subject = selectSubject(state);
  const live = selectLive(state);
  const reading =
    live.kind === 'value'
      ? `${live.digits} ${live.unit}`
      : live.kind === 'overload'
        ? words.overload
        : words.screen.large.blank;
  const said = [words.screen.reader.reading(reading)];
  if (state.stage === 'ground-check') {
    said.unshift(words.touchGround(state.grounds === 0 ? 1 : 2, walksDonor(state.plan)));
  }
  if (subject !== null) {
    const { planned, record } = subject;
    said.unshift(words.reached(planned.pin, planned.line));
    if (record.verdict !== 'unread') said.push(words.verdict[record.verdict]);
    said.push(shownExpected(expectedAt(state, subject), siUnit(state.plan.function), words));
  }
  return said.join(', ');
};
