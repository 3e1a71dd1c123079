// Place after place, bare board included: what each came to, which one is under the tool, which come next.
import type { ReactElement } from 'react';
import type { PlaceView, PressView } from '../../core/select/press.js';
import { writeChance } from '../../core/words/write-chance.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { cutText, type Line, span } from '../draw/line.js';
import { verdictOfFinding } from './press-style.js';
import { Rows } from './rows.js';

const nameColumns = 12;

export const PressPlaces = ({
  view,
  width,
  rows,
}: {
  readonly view: PressView;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  // The place under the tool stays in sight, and one that comes after it.
  const now = view.places.findIndex(({ stands }) => stands === 'now');
  const last = now < 0 ? view.places.length : Math.min(view.places.length, now + 2);
  const from = Math.max(0, last - rows);
  const shown = view.places.slice(from, from + rows);
  return (
    <Rows
      width={width}
      lines={shown.map((place) => placeLine(place, surroundings))}
      height={rows}
    />
  );
};

const placeLine = (view: PlaceView, { theme, words }: Surroundings): Line => {
  const { press } = words.screen;
  const { place, sham, stands, result } = view;
  const name = cutText(press.place(place, sham), nameColumns, theme.line.more).padEnd(nameColumns);
  if (result === null) {
    const isNow = stands === 'now';
    const style = isNow ? theme.style.accent : theme.style.faint;
    return [
      span(isNow ? `${theme.line.choice} ` : '  ', style),
      span(`${name} ${stands === 'done' ? '' : press[stands]}`, style),
    ];
  }
  const verdict = verdictOfFinding[result.finding];
  return [
    span('  '),
    span(`${name} `, theme.style.text),
    span(press.finding(result.finding), theme.verdict[verdict]),
    span(
      `  ${result.answered}/${result.cycles}  p ${writeChance(result.pValue)}`,
      theme.style.quiet,
    ),
  ];
};
