// What was done to the board, with what and for how long under heat, and how much heat each area had in all.
import { heatClocks } from '../../rework/heat-clock.js';
import { type Place, placeName } from '../../rework/heat-limits.js';
import { foreign, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Block, Cell, Section } from '../document.js';
import { momentCell } from '../moment-cells.js';
import type { Report } from '../report.js';
import { writtenSpan } from '../written.js';

/** Null where nothing was done. */
export const reworkSection = (
  { account, times }: Report,
  { shared }: TechnicalLanguage,
): Section | null => {
  const { rework, opened } = account;
  const { later } = shared;
  const words = later.rework;
  if (rework.logged.length === 0 && rework.runs.length === 0) return null;
  const rows = rework.logged.map((entry): Cell[] => [
    momentCell(times, entry.t),
    { text: placeInWords(entry, shared) },
    { text: later.action[entry.action] },
    { text: settingOf(entry, shared) },
    { text: entry.seconds === undefined ? '' : say`${writtenSpan(entry.seconds)}` },
    { text: entry.note === undefined ? '' : say`${foreign(entry.note)}` },
  ]);
  const lost = rework.runs
    .filter(({ atLeast }) => atLeast)
    .map((run): Cell[] => [
      momentCell(times, run.t),
      { text: placeInWords(run.place, shared) },
      { text: '' },
      { text: '' },
      { text: say`${writtenSpan(run.seconds)}`, small: words.atLeast },
      { text: '' },
    ]);
  const passed = rework.entries.flatMap((entry): Block[] =>
    entry.type === 'heat-limit-met' && entry.stage === 'passed' && entry.seconds === entry.allowed
      ? [
          {
            kind: 'text',
            text: words.passed(
              entry.of === undefined ? placeInWords(entry, shared) : say`${name(entry.of)}`,
              writtenSpan(entry.allowed),
            ),
          },
        ]
      : [],
  );
  const isConfirmed = rework.entries.some(({ type }) => type === 'heat-cautions-confirmed');
  return {
    id: 'rework',
    title: words.title,
    blocks: [
      {
        kind: 'table',
        caption: words.title,
        columns: [
          { title: words.at, as: 'words' },
          { title: words.place, as: 'words' },
          { title: words.action, as: 'words' },
          { title: words.setting, as: 'words' },
          { title: words.heat, as: 'figures' },
          { title: words.note, as: 'words' },
        ],
        rows: [...rows, ...lost],
      },
      ...totals(rework, opened.profile.content, shared),
      ...passed,
      ...(isConfirmed ? [{ kind: 'text' as const, text: words.confirmed }] : []),
    ],
  };
};

export const placeInWords = (place: Place, { later }: SharedWords): Phrase => {
  const named = placeName(place);
  return named === null ? later.unnamedPlace : say`${name(named)}`;
};

const settingOf = (
  entry: Report['account']['rework']['logged'][number],
  { later, comma }: SharedWords,
): Phrase => {
  const { tool, setPoint, airflow } = entry;
  const parts: Phrase[] = [
    ...(tool === undefined ? [] : [later.tool[tool]]),
    ...(setPoint === undefined ? [] : [later.rework.setPoint(value(`${setPoint} °C`))]),
    ...(airflow === undefined ? [] : [later.rework.airflow(value(String(airflow)))]),
  ];
  return parts.reduce<Phrase>(
    (all, part, at) => (at === 0 ? part : say`${all}${comma}${part}`),
    '',
  );
};

/** Each area, or place alone, that had heat, once. */
const totals = (
  rework: Report['account']['rework'],
  profile: Report['account']['opened']['profile']['content'],
  shared: SharedWords,
): readonly Block[] => {
  const seen = new Set<string>();
  return rework.runs.flatMap(({ place }) =>
    heatClocks(rework, profile, {}, place, rework.t).flatMap(({ area, limits, total }): Block[] => {
      const key = area === null ? `place ${placeName(place) ?? ''}` : `area ${area}`;
      if (seen.has(key)) return [];
      seen.add(key);
      const title = area === null ? undefined : profile.areas?.[area]?.title;
      const where =
        area === null
          ? placeInWords(place, shared)
          : say`${title === undefined ? name(area) : foreign(title)}`;
      const allowed = limits.total === undefined ? null : writtenSpan(limits.total);
      return [
        { kind: 'text', text: shared.later.rework.totals(where, writtenSpan(total), allowed) },
      ];
    }),
  );
};
