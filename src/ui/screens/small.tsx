// The walk on a small terminal: everything that decides, nothing that only helps.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { offBoard, walksDonor } from '../../core/profile/donor.js';
import { siUnit } from '../../core/reading.js';
import { selectProgress } from '../../core/select/findings.js';
import { selectCompared } from '../../core/select/live.js';
import { placeOf } from '../../core/select/scale.js';
import { type Status, selectStatus } from '../../core/select/status.js';
import { selectNext, selectSubject } from '../../core/select/subject.js';
import { pinCount } from '../../core/walk/patient.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownExpected } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { boardChip } from '../draw/board-chip.js';
import { chip } from '../draw/chip.js';
import { type Line, span, spread } from '../draw/line.js';
import { rail } from '../draw/rail.js';
import { Banner, messageFor } from '../parts/banner.js';
import { BottomLine } from '../parts/bottom-line.js';
import { SmallReading } from '../parts/reading.js';
import { Rows } from '../parts/rows.js';
import { Said } from '../parts/said.js';
import { wordFor } from '../parts/status.js';
import { Strip } from '../parts/strip.js';
import { Trace } from '../parts/trace.js';
import type { WalkScreenProps } from './walk.js';

const statusLines = 3;

export const SmallScreen = ({ snapshot, layout }: WalkScreenProps): ReactElement => {
  const { state, trouble, trace } = snapshot;
  const { width, stripRows, bodyRows } = layout;
  const surroundings = useSurroundings();
  const status = selectStatus(state, trouble);
  const traceRows = bodyRows - statusLines;
  return (
    <>
      <Rows width={width} lines={[headLine(state, width, surroundings)]} />
      <Strip state={state} width={width} rows={stripRows} />
      {messageFor(status, surroundings) === null ? (
        <>
          <SmallReading state={state} width={width} />
          <Rows
            width={width}
            lines={lowerLines(state, status, width, surroundings)}
            height={Math.min(statusLines, bodyRows)}
          />
          {traceRows >= 3 ? (
            <Trace trace={trace} t={state.t} width={width} rows={traceRows} />
          ) : (
            <Rows width={width} lines={[]} height={Math.max(0, traceRows)} />
          )}
        </>
      ) : (
        <Banner status={status} width={width} rows={bodyRows + 3} />
      )}
      <Said snapshot={snapshot} width={width} />
      <BottomLine snapshot={snapshot} width={width} />
    </>
  );
};

const headLine = (
  state: WalkState,
  width: number,
  { theme, words, simulated }: Surroundings,
): Line => {
  const subject = selectSubject(state);
  const { screen } = words;
  const left =
    subject === null
      ? [
          span(
            ` ${state.stage === 'ground-check' ? screen.title.groundCheck : ''}`,
            theme.style.accent,
          ),
        ]
      : [
          ...boardChip(state, words, theme),
          ...chip(cleanText(offBoard(subject.planned.pin).name, 40), theme.style.accent, theme),
          span(` ${cleanText(offBoard(subject.planned.line).name, 40)}`, theme.style.strong),
        ];
  const { at, total } = pinCount(state.plan, subject?.planned.index ?? state.cursor);
  const right = [
    span(screen.place(at, total), theme.style.quiet),
    ...(simulated ? [span(' '), ...chip(screen.simulatedShort, theme.style.text, theme)] : []),
  ];
  return spread(left, right, width, theme);
};

/** The verdict or how the touch stands, the scale, the tally. */
const lowerLines = (
  state: WalkState,
  status: Status,
  width: number,
  surroundings: Surroundings,
): readonly Line[] => {
  const { theme, words, keys } = surroundings;
  const subject = selectSubject(state);
  const next = selectNext(state);
  const word = wordFor(status, words, theme);
  const verdict =
    status.kind === 'judged' || status.kind === 'again' ? theme.symbol[status.verdict] : '';
  const arrow =
    next === null
      ? ''
      : `${theme.line.arrow} ${cleanText(next.pin, 40)} ${cleanText(offBoard(next.line).name, 40)} `;
  const right = subject?.confirming
    ? chip(words.screen.confirmShort(keys.next[0] ?? ''), theme.style.notice, theme)
    : [span(arrow, theme.style.quiet)];
  const first = spread(
    [span(` ${verdict === '' ? '' : `${verdict} `}${word.text}`, word.style)],
    right,
    width,
    theme,
  );
  if (subject === null) {
    const which = state.grounds === 0 ? 1 : 2;
    return state.stage === 'ground-check'
      ? [[span(` ${words.screen.groundStep(which, walksDonor(state.plan))}`, theme.style.strong)]]
      : [first];
  }
  const { expected } = subject.planned;
  const value = selectCompared(state);
  const place = value === null ? null : placeOf(value, expected);
  const scale: Line =
    expected === null || expected === 'overload'
      ? [span(` ${shownExpected(expected, siUnit(state.plan.function), words)}`, theme.style.quiet)]
      : [span(' '), ...rail(place, { width: width - 2, style: word.style }, theme)];
  const { counts, left } = selectProgress(state);
  const tally: Line = [
    ...counts.map(([kind, n]) =>
      span(` ${theme.symbol[kind]}${n} ${words.verdict[kind]}`, theme.verdict[kind]),
    ),
    span(`  ${words.screen.left(left)}`, theme.style.quiet),
  ];
  return [first, scale, tally];
};
