// Where a recorded session is to be interrupted and what is to be asked there. Pure: the same session and drill
// give the same questions.
import type { EventOf, Numbered } from '../events.js';
import { pressFindings } from '../press/decide-press.js';
import { partsToPress } from '../press/press-stage.js';
import type { Profile } from '../profile/profile-format.js';
import type { Verdict } from '../verdict.js';
import type { Drill } from './drill-format.js';
import type { DrillQuestion, VerdictQuestion, WayStop } from './question.js';
import { type SessionStory, tellSession } from './session-story.js';

const verdictChoices = ['normal', 'low', 'high', 'short', 'open', 'wobble'] as const;
const pressChoices = ['press', 'go-on'] as const;

/** Lines as they should be that are asked at least. */
const leastOthers = 6;
/** Parts that are offered beside those in the line's way: its branches before parts of other lines. */
const decoys = 2;
/** Places offered for the cause. */
const places = 4;
/** A cause is asked for only where the session itself is this sure of it. */
const sureEnough = 0.5;
/** What pressing can bring back or take away; a steady low value or a short is no matter of a loose joint. */
const worthPressing: ReadonlySet<Verdict> = new Set(['open', 'high', 'wobble']);

/** @param events all of the session's, in order, the opening first. */
export const planDrill = (
  drill: Pick<Drill, 'asks' | 'pins'>,
  opened: EventOf<'session-opened'>,
  events: Iterable<Numbered>,
): readonly DrillQuestion[] => {
  const story = tellSession(events);
  const profile = opened.profile.content;
  const all: Readonly<Record<Drill['asks'][number], () => readonly DrillQuestion[]>> = {
    verdict: () => verdictQuestions(story, drill.pins),
    press: () => pressQuestions(story, profile),
    part: () => partQuestions(story, profile),
    finding: () => findingQuestions(story),
    cause: () => causeQuestion(story, profile),
  };
  return [...new Set(drill.asks)]
    .flatMap((kind) => all[kind]())
    .sort((a, b) => a.at - b.at || order.indexOf(a.kind) - order.indexOf(b.kind));
};

const order: readonly DrillQuestion['kind'][] = ['verdict', 'finding', 'press', 'part', 'cause'];

const verdictQuestions = (story: SessionStory, pins: Drill['pins']): readonly DrillQuestion[] => {
  const asked = [...story.pins.values()].filter(({ verdict }) => isCallable(verdict));
  const findings = asked.filter(({ verdict }) => verdict !== 'normal');
  const others = asked.filter(({ verdict }) => verdict === 'normal');
  // A line that reads nothing and should is what a beginner calls wrong.
  const silent = others.filter(({ expected }) => expected === 'overload');
  const rest = others.filter(({ expected }) => expected !== 'overload');
  const few = spread(rest, Math.max(leastOthers - silent.length, findings.length));
  return [...findings, ...(pins === 'all' ? others : [...silent, ...few])].map(
    ({ pin, line, judgedAt, settled, verdict, expected }): VerdictQuestion => ({
      kind: 'verdict',
      at: judgedAt,
      pin,
      line,
      choices: verdictChoices,
      best: [verdict],
      fair: [],
      value: settled?.value ?? null,
      overload: settled?.overload ?? false,
      standardUncertainty: settled?.standardUncertainty ?? null,
      expected,
    }),
  );
};

/** Where the session itself came to no class there is nothing to call. */
const isCallable = (verdict: Verdict): boolean => verdict !== 'unsure' && verdict !== 'unread';

/** So many of the items, evenly over their length. */
const spread = <T>(items: readonly T[], count: number): readonly T[] => {
  if (count >= items.length) return items;
  const step = items.length / count;
  return Array.from({ length: count }, (_, i) => items[Math.floor((i + 0.5) * step)] as T);
};

const pressQuestions = (story: SessionStory, profile: Profile): readonly DrillQuestion[] =>
  [...story.pins.values()].flatMap(({ pin, line, verdict, agreedAt }) => {
    if (verdict === 'normal' || !isCallable(verdict) || agreedAt === null) return [];
    if (partsToPress(profile, line).length === 0) return [];
    const best = worthPressing.has(verdict) ? ('press' as const) : ('go-on' as const);
    return [
      {
        kind: 'press' as const,
        at: agreedAt + 1,
        pin,
        line,
        choices: pressChoices,
        best: [best],
        fair: [],
        verdict,
      },
    ];
  });

const partQuestions = (story: SessionStory, profile: Profile): readonly DrillQuestion[] =>
  story.presses.flatMap(({ pin, line, begunAt, judged }) => {
    const along = partsToPress(profile, line);
    const parts = Object.keys(profile.parts ?? {});
    const way = wayOf(profile, line);
    const branches = way.flatMap(({ name, is }) => (is === 'branch' ? [name] : []));
    const off = [...new Set([...branches, ...parts])]
      .filter((part) => parts.includes(part) && !along.includes(part))
      .slice(0, decoys);
    if (along.length === 0 || along.length + off.length < 2) return [];
    const answered = judged.find(({ finding }) => answers.has(finding))?.part ?? null;
    const best = answered === null ? along : [answered];
    return [
      {
        kind: 'part' as const,
        at: begunAt,
        pin,
        line,
        choices: parts.filter((part) => along.includes(part) || off.includes(part)),
        best,
        fair: along.filter((part) => !best.includes(part)),
        way,
        along,
        answered,
      },
    ];
  });

const wayOf = (profile: Profile, line: string): readonly WayStop[] =>
  (profile.lines[line]?.chain ?? []).flatMap((stop): readonly WayStop[] => {
    if ('part' in stop) return [{ name: stop.part, is: 'part' }];
    if ('chip' in stop) return [{ name: stop.chip, is: 'chip' }];
    return 'shunt' in stop && 'part' in stop.shunt ? [{ name: stop.shunt.part, is: 'branch' }] : [];
  });

const answers: ReadonlySet<string> = new Set(['loose', 'cracked', 'bridged']);

const findingQuestions = (story: SessionStory): readonly DrillQuestion[] =>
  story.presses.flatMap(({ pin, line, judged }) =>
    judged.map(({ at, part, finding, cycles, pValue, pressedValue, releasedValue }) => ({
      kind: 'finding' as const,
      at,
      pin,
      line,
      choices: pressFindings,
      best: [finding],
      // A steady open and no change at all differ only in what the line read before.
      fair: finding === 'steady' ? ['steady-open'] : finding === 'steady-open' ? ['steady'] : [],
      part,
      finding,
      cycles,
      pValue,
      pressedValue,
      releasedValue,
    })),
  );

const causeQuestion = (
  { ranked, pins }: SessionStory,
  profile: Profile,
): readonly DrillQuestion[] => {
  const [first] = ranked?.suspects ?? [];
  if (ranked === null || first === undefined || first.probability < sureEnough) return [];
  const known = ranked.suspects.map(({ id }) => id);
  const offered = [...new Set([...known, ...Object.keys(profile.parts ?? {})])].slice(0, places);
  if (offered.length < 2) return [];
  const line = first.lines[0] ?? '';
  const pin = [...pins.values()].find((told) => told.line === line)?.pin ?? '';
  return [
    {
      kind: 'cause',
      at: ranked.at,
      pin,
      line,
      choices: offered.sort(),
      best: [first.id],
      fair: [],
      probability: first.probability,
    },
  ];
};
