// The values a profile expects fit one another, judged by the very bounds the walk will use. Looks only at a
// profile whose names all lead somewhere.
import { type Problem, quoted } from '../problems.js';
import { siUnit } from '../reading.js';
import { type PlannedPin, planWalk } from './plan.js';
import type { Profile } from './profile-format.js';

export const checkExpectations = (profile: Profile): readonly Problem[] => {
  const planned = new Map<string, PlannedPin>();
  for (const pin of planWalk(profile).pins) planned.set(pin.line, pin);
  return Object.keys(profile.lines).flatMap((name) => [
    ...checkLimits(profile, name),
    ...checkUse(profile, name),
    ...checkUnits(profile, name),
    ...checkBounds(profile, planned.get(name)),
  ]);
};

const checkLimits = ({ lines }: Profile, name: string): Problem[] => {
  const { short, open } = lines[name]?.limits ?? {};
  if (short === undefined || open === undefined || short < open) return [];
  return [
    {
      path: ['lines', name, 'limits'],
      what: `"short" (${short}) is not under "open" (${open})`,
      fix: 'a reading at or under "short" is a short, at or over "open" an open line',
    },
  ];
};

/** Expected values that this profile's own walk will never look at. */
const checkUse = ({ lines, measure }: Profile, name: string): Problem[] => {
  const expect = lines[name]?.expect ?? {};
  const path = ['lines', name, 'expect'];
  const given = Object.keys(expect);
  const own = expect[measure.function];
  if (own === undefined) {
    if (given.length === 0) return [];
    return [
      {
        level: 'warning',
        path,
        what: `nothing is expected in ${measure.function}, which this profile measures`,
        fix: `give a value for "${measure.function}", or none at all`,
      },
    ];
  }
  if (own === 'overload') return [];
  if (own.polarity !== undefined && own.polarity !== measure.polarity) {
    return [
      {
        level: 'warning',
        path: [...path, measure.function, 'polarity'],
        what: `the value holds for ${own.polarity}, but this profile measures with ${measure.polarity}`,
        fix: 'give the value for that polarity, or change "measure"',
      },
    ];
  }
  if (own.range === undefined || measure.range === undefined || own.range === measure.range)
    return [];
  return [
    {
      level: 'warning',
      path: [...path, measure.function, 'range'],
      what: `the value holds on range ${own.range}, but this profile asks for range ${measure.range}`,
      fix: 'give the value for that range, or change "measure"',
    },
  ];
};

/** No junction drops this much: the figure is in millivolt. */
const mostVolts = 20;

const checkUnits = ({ lines }: Profile, name: string): Problem[] => {
  const diode = lines[name]?.expect?.diode;
  if (diode === undefined || diode === 'overload' || diode.nominal <= mostVolts) return [];
  return [
    {
      level: 'warning',
      path: ['lines', name, 'expect', 'diode', 'nominal'],
      what: `${diode.nominal} V is no diode drop`,
      fix: `diode values are in volt; did you mean ${diode.nominal / 1000}?`,
    },
  ];
};

const checkBounds = (profile: Profile, planned: PlannedPin | undefined): Problem[] => {
  const bounds = planned?.expected;
  if (planned === undefined || planned.kind === 'ground') return [];
  if (bounds === undefined || bounds === null || bounds === 'overload') return [];
  const { line, shortLimit, openLimit } = planned;
  const path = ['lines', line, 'expect', profile.measure.function];
  const unit = siUnit(profile.measure.function);
  const problems: Problem[] = [];
  if (bounds.low <= shortLimit) {
    problems.push({
      level: 'warning',
      path,
      what: `a good ${quoted(line)} may read ${figure(bounds.low)} ${unit}, which counts as a short (${shortLimit} ${unit} and under)`,
      fix: 'give the line its own "limits": { "short": … }',
    });
  }
  if (openLimit !== null && bounds.high >= openLimit) {
    problems.push({
      level: 'warning',
      path,
      what: `a good ${quoted(line)} may read ${figure(bounds.high)} ${unit}, which counts as open (${openLimit} ${unit} and over)`,
      fix: 'raise "open" in its limits, or lower the expected value',
    });
  }
  return problems;
};

const figure = (value: number): string => String(Number(value.toPrecision(4)));
