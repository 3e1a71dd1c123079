// The keys that mean something now, the most useful first; what does not fit is on the page of keys.
import type { ReactElement } from 'react';
import type { WalkState } from '../../core/walk/state.js';
import type { ScreenAct } from '../../core/words/screen-words.js';
import { useSurroundings } from '../context.js';
import { type Line, type Span, span, widthOf } from '../draw/line.js';
import { shownKey } from '../keys/key-map.js';
import { Row } from './rows.js';

export const KeyLine = ({
  state,
  width,
}: {
  readonly state: WalkState;
  readonly width: number;
}): ReactElement => {
  const { theme, words, keys } = useSurroundings();
  const asked = keysAskedFor(state);
  const spans: Span[] = [span(' ')];
  const room = width - 1;
  for (const act of usefulKeys(state)) {
    const key = shownKey(keys, act);
    if (key === null) continue;
    const label =
      act === 'pause' && state.paused === 'asked' ? words.screen.resume : words.screen.key[act];
    const entry: Line = asked.has(act)
      ? [span(` ${key} ${label} `, theme.style.notice), span(' ')]
      : [span(key, theme.style.accent), span(` ${label}  `, theme.style.quiet)];
    if (widthOf(spans) + widthOf(entry) > room) continue;
    spans.push(...entry);
  }
  return <Row line={spans} />;
};

const keysAskedFor = (state: WalkState): ReadonlySet<ScreenAct> => {
  if (state.paused === 'asked') return new Set(['pause']);
  switch (state.question?.question) {
    case 'open':
      return new Set(['open']);
    case 'same-or-next':
      return new Set(['next']);
    case 'shifted':
      return new Set(['dismiss']);
    case undefined:
      return new Set();
  }
};

const usefulKeys = (state: WalkState): readonly ScreenAct[] => {
  if (state.stage === 'ground-check') return ['skip', 'note', 'repeat', 'pause', 'keys', 'quit'];
  if (state.stage === 'finished') return ['review', 'go-to', 'retake', 'note', 'keys', 'quit'];
  const question: readonly ScreenAct[] = state.question === null ? [] : ['dismiss'];
  return [
    'open',
    'next',
    ...question,
    'back',
    'skip',
    'retake',
    'keys',
    'quit',
    'go-to',
    'note',
    'pause',
    'review',
    'repeat',
  ];
};
