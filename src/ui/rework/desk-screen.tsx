// The rework desk on the screen: where heat goes, how long it has been on against what is allowed, and what was
// done so far. Large figures, for it is glanced at from a microscope.
import type { ReactElement } from 'react';
import { cleanText } from '../../core/clean-text.js';
import { heatClocks } from '../../core/rework/heat-clock.js';
import { placeName } from '../../core/rework/heat-limits.js';
import { heatCautions } from '../../core/rework/rework-events.js';
import { describeRework } from '../../core/words/describe-rework.js';
import type { ReworkDesk } from '../../session/rework-desk.js';
import { useSurroundings } from '../context.js';
import { bigReading, bigWord } from '../draw/big-text.js';
import { chip } from '../draw/chip.js';
import { type Line, span, spread, wrapText } from '../draw/line.js';
import { printPicture } from '../draw/picture.js';
import { shownKey } from '../keys/key-map.js';
import { Rows } from '../parts/rows.js';
import type { DeskMode } from './desk-mode.js';

export interface DeskScreenProps {
  readonly desk: ReworkDesk;
  readonly mode: DeskMode;
  /** Why the last act was not carried out, in words. */
  readonly refused: string | null;
  readonly width: number;
  readonly height: number;
}

const longestName = 40;
/** Rows under which figures are as small as everything else and nothing stands apart. */
const airyRows = 20;

export const DeskScreen = (props: DeskScreenProps): ReactElement => {
  const { width, height } = props;
  const { theme } = useSurroundings();
  const bottom = useBottomLines(props);
  const room = Math.max(1, height - bottom.length);
  const lines = useDeskLines(props, room);
  const top = lines.slice(0, room);
  const filled = [...top, ...new Array<Line>(Math.max(0, room - top.length)).fill([])];
  return (
    <Rows
      width={width}
      height={height}
      lines={[...filled, ...bottom].slice(0, height)}
      key={theme.line.rule}
    />
  );
};

const useDeskLines = (
  { desk, mode, width, height }: DeskScreenProps,
  room: number,
): readonly Line[] => {
  const { theme, words, simulated } = useSurroundings();
  const { rework } = words;
  const { state, opened } = desk;
  const profile = opened.profile.content;
  const title = ` ${rework.screen.title}  ${cleanText(profile.connector.id, longestName)}`;
  const head = spread(
    [span(title, theme.style.strong)],
    simulated ? [span(`${words.screen.simulated} `, theme.style.accent)] : [],
    width,
    theme,
  );
  if (!state.confirmed) {
    const cautions = [...heatCautions.map((id) => rework.caution[id]), ...(profile.cautions ?? [])];
    const listed = cautions.flatMap((caution) =>
      wrapText(cleanText(caution, 300), width - 4).map(
        (text, at): Line => [
          span(at === 0 ? ` ${theme.line.mark} ` : '   ', theme.style.accent),
          span(text),
        ],
      ),
    );
    const asked = chip(rework.screen.confirm, theme.style.notice, theme);
    if (listed.length + 4 <= room) return [head, [], ...listed, [], asked];
    if (listed.length + 2 <= room) return [head, ...listed, asked];
    const more = chip(rework.screen.taller, theme.style.alarm, theme);
    return [head, ...listed.slice(0, Math.max(0, room - 3)), more, asked];
  }
  const place = state.heat === null ? mode.place : { part: state.heat.part, area: state.heat.area };
  const name = cleanText(rework.place(placeName(place)), longestName);
  const t = desk.now();
  const clocks = heatClocks(state, profile, desk.limits, place, t);
  const run = clocks[0]?.run ?? 0;
  const on = state.heat !== null;
  const met = state.told.at(-1);
  const style =
    met?.stage === 'passed' ? theme.style.alarm : on ? theme.style.strong : theme.style.quiet;
  const airy = height >= airyRows;
  const gap: readonly Line[] = airy ? [[]] : [];
  const figure = bigReading(run.toFixed(1), 's', 'large') ?? bigWord(run.toFixed(1)) ?? [];
  const status =
    met !== undefined
      ? chip(
          met.stage === 'passed' ? rework.screen.passed : rework.screen.near,
          met.stage === 'passed' ? theme.style.alarm : theme.style.notice,
          theme,
        )
      : on
        ? chip(rework.screen.heatOn, theme.style.notice, theme)
        : [span(` ${rework.screen.heatOff}`, theme.style.quiet)];
  const settings: readonly (readonly [string, string])[] = [
    [rework.screen.tool, mode.setting.tool === undefined ? '-' : rework.tool[mode.setting.tool]],
    [
      rework.screen.setPoint,
      mode.setting.setPoint === undefined ? '-' : rework.setPoint(mode.setting.setPoint),
    ],
    [
      rework.screen.airflow,
      mode.setting.airflow === undefined ? '-' : String(mode.setting.airflow),
    ],
    [rework.screen.action, rework.action[mode.action]],
  ];
  const totals = clocks.flatMap(({ area, limits, run: now, total }): Line[] => {
    const seconds = (of: number | undefined): string | null =>
      of === undefined ? null : rework.seconds(of);
    const where =
      area === null ? name : cleanText(profile.areas?.[area]?.title ?? area, longestName);
    const said = `${rework.screen.total(where, rework.seconds(total), seconds(limits.total))}, ${rework.screen.run(rework.seconds(now), seconds(limits.run))}`;
    const over = mode.setting.setPoint ?? 0;
    return [
      ...wrapText(said, width - 2).map((text): Line => [span(` ${text}`)]),
      ...(limits.setPoint !== undefined && over > limits.setPoint
        ? [
            [
              span(
                ` ${rework.setPointOver(rework.setPoint(over), rework.setPoint(limits.setPoint))}`,
                theme.style.accent,
              ),
            ],
          ]
        : []),
      ...(limits.run === undefined && limits.total === undefined
        ? [[span(` ${rework.noLimits}`, theme.style.quiet)]]
        : []),
    ];
  });
  const done = state.logged
    .map((entry): Line => [span(` ${cleanText(describeRework(entry, rework), 300)}`)])
    .slice(-Math.max(1, height - 17));
  return [
    head,
    ...gap,
    [
      span(` ${name}  `, theme.style.accent),
      ...status,
      ...(airy ? [] : [span(`  ${rework.seconds(run)}`, style)]),
    ],
    ...gap,
    ...(airy
      ? printPicture(figure, theme.unicode).map((text): Line => [span(` ${text}`, style)])
      : []),
    ...gap,
    ...totals,
    settings.flatMap(
      ([label, value]): Line => [span(` ${label} `, theme.style.quiet), span(`${value} `)],
    ),
    ...gap,
    [span(` ${rework.screen.done}`, theme.style.quiet)],
    ...(done.length === 0 ? [[span(` ${rework.screen.nothing}`, theme.style.quiet)]] : done),
  ];
};

const useBottomLines = ({ desk, mode, refused, width }: DeskScreenProps): readonly Line[] => {
  const { theme, words, keys } = useSurroundings();
  const { screen } = words.rework;
  if (mode.typing !== null) {
    const asks = {
      place: screen.typePlace,
      'set-point': screen.typeSetPoint,
      airflow: screen.typeAirflow,
      note: screen.typeNote,
    } as const;
    const { what, text } = mode.typing;
    return [[span(` ${asks[what]}`, theme.style.accent), span(`${text}${theme.line.cursor}`)]];
  }
  const notice =
    mode.notice === 'not-number'
      ? screen.notNumber
      : mode.notice === 'heat-is-on'
        ? screen.quitting
        : refused;
  const all = screen.keys(
    shownKey(keys, 'press') ?? '',
    shownKey(keys, 'next') ?? '',
    shownKey(keys, 'note') ?? '',
    shownKey(keys, 'quit') ?? '',
  );
  const shown = desk.state.confirmed ? all : all.slice(-1);
  return [
    notice === null ? [] : [span(` ${notice}`, theme.style.accent)],
    ...wrapText(shown.map((key) => key.replaceAll(' ', '\u00a0')).join('  '), width - 2).map(
      (text): Line => [span(` ${text.replaceAll('\u00a0', ' ')}`, theme.style.quiet)],
    ),
  ];
};
