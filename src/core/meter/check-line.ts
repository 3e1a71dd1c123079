// Checks the line grammar of a driver: the pattern and its groups, and the tables the groups look codes up in.
import { type Problem, quoted } from '../problems.js';
import { rangesOf } from './accuracy.js';
import type { Driver, LineGrammar } from './driver-format.js';
import { compilePattern } from './line-pattern.js';

const groupNames = ['value', 'unit', 'function', 'range', 'flags'];
const tables = { unit: 'units', function: 'functions', range: 'ranges', flags: 'flags' } as const;

const checkGroups = (grammar: LineGrammar, named: readonly string[]): Problem[] => {
  const pattern = ['line', 'pattern'];
  const problems: Problem[] = [];
  if (!named.includes('value')) {
    problems.push({
      path: pattern,
      what: 'the pattern has no group named value',
      fix: 'wrap the number, overload word or blanks in (?P<value>…)',
    });
  }
  for (const name of named.filter((group) => !groupNames.includes(group))) {
    problems.push({
      path: pattern,
      what: `group ${name} means nothing`,
      fix: `name it one of ${groupNames.join(', ')}, or leave it unnamed with (?:…)`,
    });
  }
  for (const [group, table] of Object.entries(tables)) {
    const has = { group: named.includes(group), table: grammar[table] !== undefined };
    if (has.group === has.table) continue;
    problems.push({
      path: has.group ? ['line'] : ['line', table],
      what: has.group
        ? `the pattern has a group ${group} but there is no table ${table}`
        : `there is a table ${table} but the pattern has no group ${group}`,
      fix: `give both or neither`,
    });
  }
  return problems;
};

const checkRanges = (driver: Driver, grammar: LineGrammar): Problem[] =>
  Object.entries(grammar.ranges ?? {}).flatMap(([code, range]) => {
    const rows = range.function ? rangesOf(driver, range.function) : driver.accuracy;
    const fits = rows.some(
      (row) => row.fullScale === range.fullScale && row.resolution === range.resolution,
    );
    if (fits) return [];
    return {
      path: ['line', 'ranges', code],
      what: `no accuracy row has full scale ${range.fullScale} in steps of ${range.resolution}`,
      fix: 'add the row to accuracy, or correct the range',
    };
  });

/** Where the unit is left out, the function asked for decides; a unit that is sent must name one quantity. */
const checkUnits = (grammar: LineGrammar): Problem[] => {
  const volt = ['diode', 'dc-volts'];
  return Object.entries(grammar.units ?? {}).flatMap(([unit, { functions }]) => {
    const kinds = new Set(functions.map((measure) => volt.includes(measure)));
    if (unit === '' || kinds.size < 2) return [];
    return {
      path: ['line', 'units', unit, 'functions'],
      what: 'one unit cannot be both ohm and volt',
      fix: 'list resistance and continuity, or diode and dc-volts',
    };
  });
};

/** The lowest character code the encoding does not have. */
const beyond = { ascii: 0x80, latin1: 0x100, utf8: Number.POSITIVE_INFINITY } as const;

/** Texts that can never be met, because the wire cannot carry them. */
const checkEncoding = ({ wire }: Driver, grammar: LineGrammar): Problem[] => {
  const texts: [string, string][] = [
    ...Object.values(tables).flatMap((table) =>
      Object.keys(grammar[table] ?? {}).map((code): [string, string] => [table, code]),
    ),
    ...(grammar.overload.texts ?? []).map((text): [string, string] => ['overload', text]),
    ...(grammar.blanks ?? []).map((text): [string, string] => ['blanks', text]),
  ];
  return texts
    .filter(([, text]) =>
      Array.from(text).some((char) => (char.codePointAt(0) ?? 0) >= beyond[wire.encoding]),
    )
    .map(([where, text]) => ({
      path: ['line', where],
      what: `${quoted(text)} cannot be sent in ${wire.encoding}`,
      fix: 'write the character the meter really sends, or set wire.encoding to latin1 or utf8',
    }));
};

export const checkLine = (driver: Driver): readonly Problem[] => {
  const grammar = driver.line;
  if (!grammar) {
    if (driver.talk.style === 'scpi') return [];
    return [
      {
        path: ['line'],
        what: `a meter that talks by ${driver.talk.style} needs a line grammar`,
        fix: 'add "line" with a pattern and its tables',
      },
    ];
  }
  try {
    const { groupNames: named } = compilePattern(grammar.pattern);
    return [
      ...checkGroups(grammar, named),
      ...checkRanges(driver, grammar),
      ...checkUnits(grammar),
      ...checkEncoding(driver, grammar),
    ];
  } catch (error) {
    return [
      {
        path: ['line', 'pattern'],
        what: error instanceof Error ? error.message : 'the pattern does not compile',
        fix: 'use RE2 syntax: no look-around, no back-references',
      },
    ];
  }
};
