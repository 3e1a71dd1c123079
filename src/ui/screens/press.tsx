// A press test: what the tool is to do, what the line reads, what the windows showed, place after place.
import { Box } from 'ink';
import type { ReactElement } from 'react';
import { fewestCycles, mostCycles } from '../../core/press/press-design.js';
import type { PressView } from '../../core/select/press.js';
import { selectStatus } from '../../core/select/status.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { type Line, span, spread } from '../draw/line.js';
import type { Layout } from '../layout.js';
import type { Snapshot } from '../live/screen-store.js';
import { Banner, messageFor } from '../parts/banner.js';
import { BottomLine } from '../parts/bottom-line.js';
import { Header } from '../parts/header.js';
import { MeasureRule } from '../parts/measure-rule.js';
import { PressPlaces } from '../parts/press-places.js';
import { PressPrompt } from '../parts/press-prompt.js';
import { pressSays } from '../parts/press-says.js';
import { PressTally, pressTallyColumns, pressTallyRows } from '../parts/press-tally.js';
import { PressTrace } from '../parts/press-trace.js';
import { SmallReading } from '../parts/reading.js';
import { Row, Rows } from '../parts/rows.js';
import { Said } from '../parts/said.js';

export interface PressScreenProps {
  readonly snapshot: Snapshot;
  readonly layout: Layout;
  readonly view: PressView;
}

/** Header, rule, the line, the place, said, keys. */
const fixedRows = 6;
const sayRows = 2;
const usualPrompt = 5;
const largePrompt = 10;
/** The widest reading in large letters, with a blank before it. */
const readingColumns = 42;

export const PressScreen = ({ snapshot, layout, view }: PressScreenProps): ReactElement => {
  const surroundings = useSurroundings();
  const { state, trouble, trace } = snapshot;
  const { width, height, form } = layout;
  const large = form === 'large';
  const promptRows = large ? largePrompt : usualPrompt;
  const tally = pressTallyColumns(view);
  const lowerRows = large
    ? Math.max(pressTallyRows, Math.min(8, view.places.length + 1))
    : pressTallyRows;
  const gaps = large ? 3 : 0;
  const traceRows = height - fixedRows - sayRows - promptRows - lowerRows - gaps;
  const status = selectStatus(state, trouble);
  const gap = large ? <Row width={width} line={[]} /> : null;
  return (
    <>
      <Header state={state} width={width} />
      <MeasureRule state={state} width={width} />
      <Row width={width} line={lineLine(view, width, surroundings)} />
      {gap}
      {messageFor(status, surroundings) === null ? (
        <Prompt view={view} snapshot={snapshot} width={width} rows={promptRows} />
      ) : (
        <Banner status={status} width={width} rows={promptRows} />
      )}
      <Row width={width} line={placeLine(view, width, surroundings)} />
      {gap}
      <PressTrace view={view} trace={trace} t={state.t} width={width} rows={traceRows} />
      {gap}
      <Box height={lowerRows} flexShrink={0}>
        <PressTally view={view} width={tally} />
        <PressPlaces view={view} width={width - tally} rows={lowerRows} />
      </Box>
      <Rows width={width} lines={pressSays(view, surroundings, width)} height={sayRows} />
      <Said snapshot={snapshot} width={width} />
      <BottomLine snapshot={snapshot} width={width} />
    </>
  );
};

const Prompt = ({
  view,
  snapshot: { state },
  width,
  rows,
}: {
  readonly view: PressView;
  readonly snapshot: Snapshot;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const room = width - readingColumns;
  return (
    <Box height={rows} flexShrink={0}>
      <PressPrompt view={view} width={room} rows={rows} />
      <Box height={rows} flexShrink={0} alignItems="center">
        <SmallReading state={state} width={readingColumns} />
      </Box>
    </Box>
  );
};

const lineLine = (
  { pin, line, here, places, free }: PressView,
  width: number,
  { theme, words }: Surroundings,
): Line => {
  const { press } = words.screen;
  const nth = here === undefined ? places.length : places.indexOf(here) + 1;
  return spread(
    [
      span(` ${free === null ? press.title : press.freeTitle} `, theme.style.quiet),
      span(line, theme.style.strong),
      span(`  ${words.screen.pin(pin)}`, theme.style.quiet),
    ],
    [span(`${press.placeOf(nth, places.length)} `, theme.style.quiet)],
    width,
    theme,
  );
};

const placeLine = (
  { here, cycle, free }: PressView,
  width: number,
  { theme, words }: Surroundings,
): Line => {
  const { press } = words.screen;
  if (here === undefined) return [];
  return spread(
    [
      span(` ${theme.line.choice} `, theme.style.accent),
      span(press.under(here.place, here.sham), theme.style.accent),
    ],
    free === null
      ? [span(`${press.cycle(cycle, fewestCycles, mostCycles)} `, theme.style.quiet)]
      : [],
    width,
    theme,
  );
};
