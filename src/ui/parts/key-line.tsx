// The keys that mean something now, the most useful first; what does not fit is on the page of keys.
import type { ReactElement } from 'react';
import { siUnit } from '../../core/reading.js';
import type { WalkState } from '../../core/walk/state.js';
import { type ScreenAct, screenActs } from '../../core/words/screen-words.js';
import type { Words } from '../../core/words/words.js';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, widthOf } from '../draw/line.js';
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
  const gap = width < 60 ? '' : ' ';
  const entries: Entry[] = [];
  let room = width - 1;
  for (const act of byUse(state, asked)) {
    const key = shownKey(keys, act);
    if (key === null) continue;
    const goesOn = act === 'pause' && state.paused === 'asked';
    const label = goesOn ? words.screen.resume : labelOf(act, state, words);
    const line: Line = asked.has(act)
      ? [...chip(`${key} ${label}`, theme.style.notice, theme), span(' ')]
      : [span(` ${key}`, theme.style.accent), span(` ${label}${gap}`, theme.style.quiet)];
    if (widthOf(line) > room) continue;
    room -= widthOf(line);
    entries.push({ act, line });
  }
  entries.sort((one, other) => screenActs.indexOf(one.act) - screenActs.indexOf(other.act));
  return <Row width={width} line={entries.flatMap(({ line }) => line)} />;
};

/** In a free test the keys of a press test mark a press, and end the test. */
const labelOf = (act: ScreenAct, { press }: WalkState, { screen }: Words): string => {
  if (press === null) return screen.key[act];
  if (act === 'dismiss') return screen.press.endKey;
  if (act !== 'press' || press.free === null) return screen.key[act];
  return press.free.pressing ? screen.press.releasedKey : screen.press.pressingKey;
};

interface Entry {
  readonly act: ScreenAct;
  readonly line: Line;
}

const keysAskedFor = (state: WalkState): ReadonlySet<ScreenAct> => {
  if (state.paused === 'asked') return new Set(['pause']);
  switch (state.question?.question) {
    case 'open':
      return new Set(['open']);
    case 'same-or-next':
      return new Set(['next']);
    case 'go-back':
      return new Set(['back']);
    case 'shifted':
      return new Set(['dismiss']);
    case undefined:
      return new Set();
  }
};

/** The acts that mean something now, the most needed first. */
const byUse = (state: WalkState, asked: ReadonlySet<ScreenAct>): readonly ScreenAct[] => [
  ...asked,
  ...usefulKeys(state).filter((act) => !asked.has(act)),
];

/** What can be done with the leads before the walk. */
const beforeGround = (
  { function: measure }: WalkState['plan'],
  reference: WalkState['reference'],
): readonly ScreenAct[] => [
  ...(siUnit(measure) === 'Ω' ? (['zero'] as const) : []),
  ...(reference === null ? [] : (['reference'] as const)),
];

const usefulKeys = ({
  alone,
  stage,
  ready,
  plan,
  reference,
  question,
  press,
  probing,
  ranked,
}: WalkState): readonly ScreenAct[] => {
  if (ready !== null) return ['skip', 'quit', 'keys', 'note', 'pause', 'repeat'];
  if (stage === 'ground-check') {
    return ['skip', 'quit', 'keys', ...beforeGround(plan, reference), 'note', 'pause', 'repeat'];
  }
  if (press?.free) return ['press', 'dismiss', 'note', 'quit', 'keys', 'repeat'];
  if (alone !== null && press === null) return ['press', 'quit', 'note', 'keys', 'repeat'];
  if (press !== null) return ['dismiss', 'pause', 'note', 'quit', 'keys', 'repeat'];
  if (probing !== null) return ['open', 'dismiss', 'keys', 'quit', 'note', 'pause', 'repeat'];
  const walking: readonly ScreenAct[] = ['open', 'next', 'back', 'keys', 'quit', 'skip', 'retake'];
  const asking: readonly ScreenAct[] = question === null ? [] : ['dismiss'];
  const proposed: readonly ScreenAct[] = ranked?.next == null ? [] : ['probe'];
  return [
    ...asking,
    ...walking,
    ...proposed,
    'press',
    'pause',
    'note',
    'go-to',
    'review',
    'repeat',
  ];
};
