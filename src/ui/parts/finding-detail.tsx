// What helps to look into one finding: what the line is, how its mate reads, and what lies along it.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import type { Profile } from '../../core/profile/profile-format.js';
import { selectChain } from '../../core/select/chain.js';
import type { Finding } from '../../core/select/findings.js';
import type { WalkState } from '../../core/walk/state.js';
import { shownConfidence, shownValue } from '../../core/words/shown.js';
import { type Surroundings, useSurroundings } from '../context.js';
import { drawChain } from '../draw/chain-lines.js';
import { type Line, span, spread, wrapText } from '../draw/line.js';
import { nextProbeLines } from '../draw/next-probe-line.js';
import { Rows } from './rows.js';

const longestText = 300;

export const FindingDetail = ({
  finding,
  state,
  width,
  rows,
}: {
  readonly finding: Finding;
  readonly state: WalkState;
  readonly width: number;
  readonly rows: number;
}): ReactElement => {
  const surroundings = useSurroundings();
  const { theme } = surroundings;
  const rule = theme.line.rule.repeat(width);
  const lines: readonly Line[] = [
    [span(rule, theme.style.faint)],
    ...titleLines(finding, state, width, surroundings),
    ...mateLines(finding, state, surroundings),
    ...chainLines(finding, state, width, surroundings),
    ...nextProbeLines(state, surroundings),
  ];
  return <Rows lines={lines} width={width} height={rows} />;
};

/** Which line, how sure its verdict is, and what would help where it is not. */
const titleLines = (
  { pin, line, index, verdict }: Finding,
  state: WalkState,
  width: number,
  { profile, theme, words }: Surroundings,
): readonly Line[] => {
  const title = profileLine(profile, line)?.title;
  const left = [
    span(` ${pin} `, theme.style.accent),
    span(line, theme.style.strong),
    span(title === undefined ? '' : `  ${cleanText(title, longestText)}`, theme.style.quiet),
  ];
  const record = state.pins[index];
  if (record === undefined || verdict === 'unread') return [left];
  const sure = [span(shownConfidence(record, words), theme.verdict[verdict])];
  const { advice } = record;
  return [
    spread(left, sure, width, theme),
    ...(advice === undefined ? [] : [[span(` ${words.context.advice[advice]}`, theme.style.text)]]),
  ];
};

const mateLines = (
  { index }: Finding,
  state: WalkState,
  { theme, words }: Surroundings,
): readonly Line[] => {
  const mate = state.plan.pins[index]?.mate;
  const at = state.plan.pins.findIndex(({ line }) => line === mate);
  const planned = state.plan.pins[at];
  const record = state.pins[at];
  if (planned === undefined || record === undefined) return [];
  const { verdict } = record;
  const read = verdict === 'unread' ? '' : ` ${shownValue(state, planned.pin, words)}`;
  return [
    [
      span(` ${words.screen.mate} `, theme.style.quiet),
      span(
        `${cleanText(planned.pin, longestText)} ${cleanText(planned.line, longestText)}${read} `,
      ),
      span(`${theme.symbol[verdict]} ${words.verdict[verdict]}`, theme.verdict[verdict]),
    ],
  ];
};

/** The chain with what is known of each place, or, while nothing is, by name alone. */
const chainLines = (
  finding: Finding,
  state: WalkState,
  width: number,
  surroundings: Surroundings,
): readonly Line[] => {
  const chain = selectChain(state, finding.index);
  return chain === null
    ? wayLines(finding, width, surroundings)
    : drawChain(chain, width, surroundings.words, surroundings.theme);
};

/** The chain from the pin to the chip, in order. */
const wayLines = (
  { line }: Finding,
  width: number,
  { profile, theme, words }: Surroundings,
): readonly Line[] => {
  const stops = (profileLine(profile, line)?.chain ?? []).map((stop) => {
    if ('joint' in stop) return stop.joint;
    if ('part' in stop) return stop.part;
    if ('chip' in stop) return stop.chip;
    return `(${words.screen.branch} ${stop.shunt.part})`;
  });
  if (stops.length === 0) return [];
  const way = stops.map((stop) => cleanText(stop, longestText)).join(` ${theme.line.arrow} `);
  return wrapText(`${words.screen.way}: ${way}`, width - 2).map((text) => [
    span(` ${text}`, theme.style.text),
  ]);
};

const profileLine = (
  profile: Profile | null,
  line: string,
): Profile['lines'][string] | undefined =>
  profile !== null && Object.hasOwn(profile.lines, line) ? profile.lines[line] : undefined;
