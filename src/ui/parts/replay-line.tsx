// Where a played session stands: time, pace, the way it lies along the session with what is to be found on it,
// and the keys. Takes the place of the key line; what does not fit gives way from the middle.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { clockTime, type PlaybackView } from '../../core/replay/view.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, spread, widthOf } from '../draw/line.js';
import { type ReplayKeyMap, replayKeys } from '../keys/replay-keys.js';
import type { Theme } from '../theme.js';
import { Row } from './rows.js';

const wideColumns = 60;
const leastBar = 8;
const mostBar = 60;

export const ReplayLine = ({
  view,
  width,
}: {
  readonly view: PlaybackView;
  readonly width: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { theme } = surroundings;
  const keys = replayKeys(surroundings.keys);
  const left = timeAndPace(view, width, surroundings);
  const hints = keyHints(view, keys, width, surroundings);
  const next = nextFind(view, keys, surroundings);
  let room = width - widthOf(left) - widthOf(hints) - 1;
  const withNext = room >= widthOf(next);
  if (withNext) room -= widthOf(next);
  const bar = room >= leastBar + 1 ? barOf(view, Math.min(mostBar, room - 1), theme) : [];
  const line = [...left, ...bar, ...(withNext ? next : [])];
  return <Row width={width} line={spread(line, hints, width, theme)} />;
};

const timeAndPace = (view: PlaybackView, width: number, { theme, words }: Surroundings): Line => {
  const { replay } = words;
  const time = ` ${clockTime(view.atS)}/${clockTime(view.lengthS)} `;
  const pace = replay.speed(view.speed);
  const state = view.ended ? replay.ended : view.paused ? replay.paused : pace;
  return [
    ...(width >= wideColumns ? chip(replay.title, theme.style.accent, theme) : []),
    span(time, theme.style.strong),
    ...(view.paused || view.ended
      ? chip(state, theme.style.notice, theme)
      : [span(state, theme.style.accent)]),
    span(' '),
  ];
};

const nextFind = (
  { next, ended }: PlaybackView,
  keys: ReplayKeyMap,
  { theme, words }: Surroundings,
): Line => {
  const { replay } = words;
  if (ended) return [];
  if (next === null) return [span(` ${replay.nothingNext}`, theme.style.quiet)];
  const pin = next.pin === null ? null : cleanText(next.pin, 12);
  const says = replay.next(next.kind, pin, next.verdict, clockTime(next.inS));
  return [
    span(` ${keys['next-waymark'][0] ?? ''}`, theme.style.accent),
    span(` ${says}`, theme.style.quiet),
  ];
};

const keyHints = (
  { paused, ended }: PlaybackView,
  keys: ReplayKeyMap,
  width: number,
  { theme, words: { replay } }: Surroundings,
): Line => {
  const first = ended ? 'start' : 'pause';
  const acts = width < wideColumns ? (['keys'] as const) : ([first, 'keys'] as const);
  return acts.flatMap((act): Line => {
    // The last name is the one that lies under the thumb.
    const key = keys[act].at(-1);
    if (key === undefined) return [];
    const label = act === 'pause' && paused ? replay.goOn : replay.key[act];
    return [span(` ${key}`, theme.style.accent), span(` ${label} `, theme.style.quiet)];
  });
};

/** The session from end to end: waymarks on it, and here. */
const barOf = ({ atS, lengthS, marks }: PlaybackView, width: number, theme: Theme): Line => {
  const column = (share: number): number =>
    Math.round(Math.min(1, Math.max(0, share)) * (width - 1));
  const here = column(lengthS > 0 ? atS / lengthS : 1);
  const marked = new Set(marks.map(column));
  return Array.from({ length: width }, (_, at) => {
    if (at === here) return span(theme.line.here, theme.style.accent);
    if (marked.has(at)) return span(theme.line.mark, theme.style.strong);
    return span(at < here ? theme.line.band : theme.line.rule, theme.style.faint);
  });
};
