// The last line of a drill: how far it has come, how fast it plays, and the keys.
import type { ReactElement } from 'react';
import { shownPoints } from '../../core/drill/drill-lines.js';
import { pointsOf } from '../../core/drill/drill-run.js';
import type { PlaybackView } from '../../core/replay/view.js';
import type { DrillView } from '../../session/drill-session.js';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, spread } from '../draw/line.js';
import { Row } from '../parts/rows.js';

const wideColumns = 60;

export const DrillLine = ({
  view,
  replay,
  leaving,
  width,
}: {
  readonly view: DrillView;
  readonly replay: PlaybackView;
  readonly leaving: boolean;
  readonly width: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const { drill } = words;
  const of = view.questions.length;
  const nth = Math.min(of, view.marked.length + (view.explaining ? 0 : 1));
  const playing = view.asked === null && !view.explaining && !view.done;
  const entry = (key: string, label: string): Line => [
    span(` ${key}`, theme.style.accent),
    span(` ${label}`, theme.style.quiet),
  ];
  const keys: Line = [
    ...(view.asked === null ? [] : entry(`1-${view.asked.choices.length}`, drill.choose)),
    ...(playing ? entry('p', replay.paused ? drill.resume : drill.pause) : []),
    ...(playing && width >= wideColumns ? entry('n', drill.skipAhead) : []),
    ...entry('q', drill.leave),
    span(' '),
  ];
  const left: Line = [
    ...(width >= wideColumns ? chip(drill.title, theme.style.accent, theme) : []),
    span(` ${drill.progress(nth, of, shownPoints(pointsOf(view)))}`, theme.style.strong),
    span(playing ? ` ${words.replay.speed(replay.speed)}` : '', theme.style.quiet),
  ];
  const right = leaving ? chip(drill.leaveAgain, theme.style.alarm, theme) : keys;
  return <Row width={width} line={spread(left, right, width, theme)} />;
};
