// A terminal too small for any screen: one line that still says the reading, and what size would do.
import type { ReactElement } from 'react';
import { selectLive } from '../../core/select/live.js';
import { selectStatus } from '../../core/select/status.js';
import { selectSubject } from '../../core/select/subject.js';
import { useSurroundings } from '../context.js';
import { span } from '../draw/line.js';
import { leastColumns, leastRows } from '../layout.js';
import { Rows } from '../parts/rows.js';
import { wordFor } from '../parts/status.js';
import type { WalkScreenProps } from './walk.js';

export const LineScreen = ({
  snapshot: { state, trouble },
  layout,
}: WalkScreenProps): ReactElement => {
  const { theme, words } = useSurroundings();
  const subject = selectSubject(state);
  const live = selectLive(state);
  const reading =
    live.kind === 'value' ? `${live.digits} ${live.unit}` : words.screen.large.overload;
  const word = wordFor(selectStatus(state, trouble), words, theme);
  const lines = [
    [
      span(subject === null ? '' : `${subject.planned.pin} `, theme.style.accent),
      span(`${reading} `, theme.style.strong),
      span(word.text, word.style),
    ],
    [span(words.screen.tooSmall(leastColumns, leastRows), theme.style.quiet)],
  ];
  return <Rows width={layout.width} lines={lines.slice(0, layout.height)} />;
};
