// Looks the fields of a matched line up in a driver's tables: which function, which unit, which range, which
// flags. A code the tables do not know is refused: a meter switched to something else must not be misread.
import { type MeasureFunction, type ReadingFlag, readingFlags } from '../reading.js';
import type { LineGrammar } from './driver-format.js';
import type { MatchedGroups } from './line-pattern.js';

type Unit = NonNullable<LineGrammar['units']>[string];
type Range = NonNullable<LineGrammar['ranges']>[string];

export interface LineFields {
  readonly function: MeasureFunction;
  readonly unit: Unit | undefined;
  readonly range: Range | undefined;
  readonly flags: readonly ReadingFlag[];
}

/** Maps, not objects: a hostile code such as `constructor` must find nothing. */
const tableOf = <T>(entries: Record<string, T> | undefined): ReadonlyMap<string, T> =>
  new Map(Object.entries(entries ?? {}).map(([code, entry]) => [code.trim(), entry]));

/** Each code found is taken out before shorter ones are looked for, so that `MAX` is not also `M`. */
const flagsIn = (text: string, codes: readonly [string, ReadingFlag][]): ReadingFlag[] => {
  const found = new Set<ReadingFlag>();
  let rest = text;
  for (const [code, flag] of codes) {
    if (!rest.includes(code)) continue;
    found.add(flag);
    rest = rest.replaceAll(code, ' ');
  }
  return readingFlags.filter((flag) => found.has(flag));
};

const functionByUnit = (unit: Unit, asked: MeasureFunction): MeasureFunction | undefined =>
  unit.functions.includes(asked) ? asked : unit.functions[0];

/** Prepares the tables once; the result gives the fields of one match, or why they cannot be told. */
export const fieldReader = (
  grammar: LineGrammar,
): ((group: MatchedGroups, asked: MeasureFunction) => LineFields | string) => {
  const functions = tableOf(grammar.functions);
  const units = tableOf(grammar.units);
  const ranges = tableOf(grammar.ranges);
  const flagCodes = Object.entries(grammar.flags ?? {}).sort(([a], [b]) => b.length - a.length);

  return (group, asked) => {
    const functionCode = group('function');
    const unitText = group('unit');
    const rangeCode = group('range');
    const named = functions.get(functionCode);
    const unit = units.get(unitText);
    const range = ranges.get(rangeCode);
    if (functionCode !== '' && !named) return 'function not offered';
    if (unitText !== '' && !unit) return 'unit not known';
    if (rangeCode !== '' && !range) return 'range not known';
    const told = named ?? range?.function;
    if (told && range?.function && told !== range.function) {
      return 'range does not fit the function';
    }
    if (told && unit && !unit.functions.includes(told)) return 'unit does not fit the function';
    return {
      function: told ?? (unit ? functionByUnit(unit, asked) : grammar.function) ?? asked,
      unit,
      range,
      flags: flagsIn(group('flags'), flagCodes),
    };
  };
};
