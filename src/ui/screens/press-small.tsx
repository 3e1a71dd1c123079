// A press test on a small terminal: what to do, the reading, the windows and the count.
import type { ReactElement } from 'react';
import { selectLive } from '../../core/select/live.js';
import { selectStatus } from '../../core/select/status.js';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, spread } from '../draw/line.js';
import { Banner, messageFor } from '../parts/banner.js';
import { BottomLine } from '../parts/bottom-line.js';
import { PressPrompt } from '../parts/press-prompt.js';
import { pressSays } from '../parts/press-says.js';
import { shortTally } from '../parts/press-tally.js';
import { PressTrace } from '../parts/press-trace.js';
import { Rows } from '../parts/rows.js';
import { Said } from '../parts/said.js';
import type { PressScreenProps } from './press.js';

const promptRows = 3;
/** Head, place and reading, tally or finding, said, keys. */
const fixedRows = 5;

export const PressSmallScreen = ({ snapshot, layout, view }: PressScreenProps): ReactElement => {
  const surroundings = useSurroundings();
  const { state, trouble, trace } = snapshot;
  const { width, height } = layout;
  const { theme, words, simulated } = surroundings;
  const { press, simulatedShort, large } = words.screen;
  const live = selectLive(state);
  const reading = live.kind === 'value' ? `${live.digits} ${live.unit}` : large.overload;
  const head = spread(
    [...chip(view.pin, theme.style.accent, theme), span(` ${view.line}`, theme.style.strong)],
    [
      span(view.free === null ? press.cycleShort(view.cycle) : '', theme.style.quiet),
      ...(simulated ? [span(' '), ...chip(simulatedShort, theme.style.text, theme)] : []),
    ],
    width,
    theme,
  );
  const { here } = view;
  const under: Line =
    here === undefined
      ? []
      : [
          span(` ${theme.line.choice} `, theme.style.accent),
          span(press.place(here.place, here.sham), theme.style.accent),
        ];
  const status = selectStatus(state, trouble);
  const says = pressSays(view, surroundings, width);
  const lines: readonly Line[] = [
    spread(under, [span(`${reading} `, theme.style.strong)], width, theme),
    here === undefined ? (says[0] ?? []) : shortTally(view, surroundings),
  ];
  return (
    <>
      <Rows width={width} lines={[head]} />
      {messageFor(status, surroundings) === null ? (
        <PressPrompt view={view} width={width} rows={promptRows} />
      ) : (
        <Banner status={status} width={width} rows={promptRows} />
      )}
      <Rows width={width} lines={lines} />
      <PressTrace
        view={view}
        trace={trace}
        t={state.t}
        width={width}
        rows={Math.max(0, height - promptRows - fixedRows)}
      />
      <Said snapshot={snapshot} width={width} />
      <BottomLine snapshot={snapshot} width={width} />
    </>
  );
};
