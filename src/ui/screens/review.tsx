// What is not normal, to be gone through: choose one, go there, read it again.
import type { ReactElement } from 'react';
import { siUnit } from '../../core/reading.js';
import { type Finding, selectFindings } from '../../core/select/findings.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownExpected } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { type Line, span, wrapText } from '../draw/line.js';
import { shownKey } from '../keys/key-map.js';
import { FindingDetail } from '../parts/finding-detail.js';
import { Header } from '../parts/header.js';
import { ReplayLine } from '../parts/replay-line.js';
import { Row, Rows } from '../parts/rows.js';
import { Said } from '../parts/said.js';
import { findingLine } from '../parts/side.js';
import { Strip } from '../parts/strip.js';
import { Tally } from '../parts/tally.js';
import type { WalkScreenProps } from './walk.js';

/** Header, heading, gap, tally, said, keys. */
const fixedRows = 6;
const wideColumns = 72;
/** Columns of what is expected, with its unit: "4.928 kΩ to 6.272 kΩ expected". */
const expectedColumns = 32;
/** Rows of the list that are left beside the detail, and of the detail. */
const leastList = 5;
const detailAtMost = 9;
/** What a recheck comes to. */
const recheckRows = 2;

export const ReviewScreen = ({
  snapshot,
  layout,
  choice,
}: WalkScreenProps & { readonly choice: number }): ReactElement => {
  const surroundings = useSurroundings();
  const { theme, words } = surroundings;
  const { state } = snapshot;
  const { width, height, stripRows } = layout;
  const findings = selectFindings(state);
  const chosen = Math.min(choice, findings.length - 1);
  const finding = findings[chosen];
  const free = Math.max(1, height - fixedRows - stripRows);
  const outcome = outcomeLines(state, width, surroundings);
  const open = free - (outcome === null ? 0 : recheckRows);
  const detailRows =
    finding === undefined || open < 2 * leastList ? 0 : Math.min(detailAtMost, open - leastList);
  const room = Math.max(1, open - detailRows);
  const from = Math.max(0, Math.min(findings.length - room, chosen - (room >> 1)));
  const lines = findings
    .slice(from, from + room)
    .map(
      (finding, at): Line =>
        entryLine(finding, from + at === chosen, snapshot, width, surroundings),
    );
  const heading = `${words.screen.title.review} ${theme.line.dot} ${findings.length}`;
  const rule = theme.line.rule.repeat(Math.max(0, width - heading.length - 4));
  return (
    <>
      <Header state={state} width={width} />
      <Strip state={state} width={width} rows={stripRows} here={finding?.index} />
      <Row
        width={width}
        line={[
          span(`${theme.line.rule}${theme.line.rule} `, theme.style.faint),
          span(heading, theme.style.accent),
          span(` ${rule}`, theme.style.faint),
        ]}
      />
      {outcome === null ? null : <Rows width={width} lines={outcome} height={recheckRows} />}
      <Rows
        width={width}
        lines={lines.length === 0 ? nothingFound(surroundings, state) : lines}
        height={room}
      />
      {finding === undefined || detailRows === 0 ? null : (
        <FindingDetail finding={finding} state={state} width={width} rows={detailRows} />
      )}
      <Row width={width} line={[]} />
      <Tally state={state} last={undefined} width={width} />
      <Said snapshot={snapshot} width={width} />
      {snapshot.replay === null ? (
        <Row
          width={width}
          line={keyLine(surroundings, findings.length > 0, state.stage === 'finished')}
        />
      ) : (
        <ReplayLine view={snapshot.replay} width={width} />
      )}
    </>
  );
};

const outcomeLines = (
  { recheck, recheckOutcome }: WalkState,
  width: number,
  { theme, words }: Surroundings,
): readonly Line[] | null => {
  if (recheck === null || recheckOutcome === null) return null;
  const style = recheckOutcome === 'good' ? theme.verdict.normal : theme.style.accent;
  return wrapText(words.rework.outcome[recheckOutcome], width - 4).map((text) => [
    span(`  ${text}`, style),
  ]);
};

const nothingFound = (
  { theme, words }: Surroundings,
  { stage, recheck }: WalkState,
): readonly Line[] => {
  // A recheck has a word of its own: pins that read normal may still have moved.
  if (recheck !== null) return [];
  const says = stage === 'finished' ? words.screen.allNormal : words.screen.noneFound;
  return [[], [span(`  ${says}`, theme.verdict.normal)]];
};

const entryLine = (
  finding: Finding,
  chosen: boolean,
  { state }: WalkScreenProps['snapshot'],
  width: number,
  surroundings: Surroundings,
): Line => {
  const { theme, words } = surroundings;
  const wide = width >= wideColumns;
  const expected = shownExpected(finding.expected, siUnit(state.plan.function), words);
  const inner = wide ? Math.min(52, width - expectedColumns - 3) : width - 4;
  const line = [
    span(chosen ? ` ${theme.line.choice} ` : '   ', theme.style.accent),
    ...findingLine(finding, state, inner, surroundings),
    ...(wide ? [span(` ${expected}`, theme.style.quiet)] : []),
  ];
  return chosen ? line.map(({ text, style }) => span(text, { ...style, bold: true })) : line;
};

const keyLine = ({ theme, words, keys }: Surroundings, some: boolean, finished: boolean): Line => {
  const { screen } = words;
  const entry = (key: string, label: string): Line => [
    span(` ${key}`, theme.style.accent),
    span(` ${label} `, theme.style.quiet),
  ];
  const review = shownKey(keys, 'review');
  return [
    ...(some
      ? [...entry(theme.line.upDown, screen.choose), ...entry('enter', screen.goAndRetake)]
      : []),
    ...(finished || review === null ? [] : entry(review, screen.key.back)),
    ...entry(shownKey(keys, 'note') ?? '', screen.key.note),
    ...entry(shownKey(keys, 'quit') ?? '', screen.key.quit),
  ];
};
