// Where a played session stands, as one line.
import { clockTime, type PlaybackView } from '../../core/replay/view.js';
import type { Words } from '../../core/words/words.js';

export const playedLine = (view: PlaybackView, { replay }: Words): string => {
  const pace = view.ended ? replay.ended : view.paused ? replay.paused : replay.speed(view.speed);
  return `${clockTime(view.atS)}/${clockTime(view.lengthS)}, ${pace}`;
};
