// Ink takes every character of a frame apart and puts it together again: two thirds of what a frame costs. So it
// lays out one character for each painted line, and the line takes its place on the way to the terminal.
import { createContext } from 'react';

export interface StandIns {
  /** The one character that stands for a painted line of `columns` columns; none for an empty one. */
  standFor(painted: string, columns: number): string;
  /** A frame as Ink laid it out, with the painted lines in it. */
  fill(frame: string): string;
}

/** Null where Ink is given the painted lines themselves. */
export const StandInsContext = createContext<StandIns | null>(null);

/** Private use area of the basic plane: one column each, and nothing that a part of the screen would print. */
const first = 0xe000;
/** Far more than one frame has lines, so that none stands for two lines in two frames that follow each other. */
const most = 4096;
const standIn = /([\uE000-\uEFFF])( *)/g;

interface Stood {
  readonly painted: string;
  readonly columns: number;
}

export const createStandIns = (): StandIns => {
  const stood: Stood[] = [];
  const places = new Map<string, number>();
  let next = 0;
  const placeOf = (painted: string, columns: number): number => {
    const known = places.get(painted);
    if (known !== undefined) return known;
    const place = next % most;
    const before = stood[place];
    if (before !== undefined) places.delete(before.painted);
    stood[place] = { painted, columns };
    places.set(painted, place);
    next += 1;
    return place;
  };
  return {
    standFor: (painted, columns) =>
      columns === 0 ? '' : String.fromCharCode(first + placeOf(painted, columns)),
    fill: (frame) =>
      frame.replace(standIn, (mark: string, character: string, blanks: string) => {
        const line = stood[character.charCodeAt(0) - first];
        if (line === undefined) return mark;
        return line.painted + ' '.repeat(Math.max(0, 1 + blanks.length - line.columns));
      }),
  };
};
