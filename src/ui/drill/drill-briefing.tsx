// Before a drill plays: what it is about. Nothing moves until the trainee has read it.
import type { ReactElement } from 'react';
import { useSurroundings } from '../context.js';
import { chip } from '../draw/chip.js';
import { type Line, span, wrapText } from '../draw/line.js';
import { Rows } from '../parts/rows.js';

export interface Briefing {
  readonly title: string;
  readonly briefing: string;
  /** What earlier results say. */
  readonly before: string;
}

export const DrillBriefing = ({
  briefing: { title, briefing, before },
  width,
  rows,
}: {
  readonly briefing: Briefing;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const { theme, words } = useSurroundings();
  const { drill } = words;
  const keys: Line = [
    span(' enter', theme.style.accent),
    span(` ${drill.begin}`, theme.style.quiet),
    span('  q', theme.style.accent),
    span(` ${drill.leave}`, theme.style.quiet),
  ];
  const text = wrapText(briefing, Math.min(width, 74) - 2);
  // Where not everything fits, the briefing itself and the keys do.
  const airy = text.length + 7 <= rows;
  const gap: readonly Line[] = airy ? [[]] : [];
  const lines: readonly Line[] = [
    [...chip(drill.title, theme.style.accent, theme), span(` ${title}`, theme.style.strong)],
    ...gap,
    ...text.map((line): Line => [span(` ${line}`, theme.style.text)]),
    ...gap,
    ...(airy ? [[span(` ${before}`, theme.style.quiet)], []] : []),
  ];
  return <Rows width={width} lines={[...lines.slice(0, rows - 1), keys]} height={rows} />;
};
