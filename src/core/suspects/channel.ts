// How likely each verdict or press finding is for what the meter shows: probes miss, judging errs, tests err.
// `unsure`, `unread` and `inconclusive` are none of these: they tell nothing about any fault.
import { type ShownClass, type Shows, shownClasses } from './shows.js';

export const tellingVerdicts = ['normal', 'low', 'high', 'short', 'open', 'wobble'] as const;
export type TellingVerdict = (typeof tellingVerdicts)[number];

export const tellingFindings = ['loose', 'cracked', 'bridged', 'steady-open', 'steady'] as const;
export type TellingFinding = (typeof tellingFindings)[number];

/** A line with a joint that answers to pressure does not hold still this often. Common practice, no source. */
const wobbleShare = 0.15;

export interface Touched {
  readonly shows: Shows;
  readonly intermittent: boolean;
  /** A good board shows overload here. */
  readonly overloadIsNormal: boolean;
}

/** One probability for each of `tellingVerdicts`; they sum to 1. */
export const verdictProbabilities = (
  { shows, intermittent, overloadIsNormal }: Touched,
  noise: { readonly missed: number; readonly misjudged: number },
): number[] => {
  const missedAs: ShownClass = overloadIsNormal ? 'normal' : 'open';
  const told = tellingVerdicts.map((verdict) =>
    shownClasses.reduce(
      (sum, shown) => sum + shows[shown] * tellsAs(verdict, shown, missedAs, noise),
      0,
    ),
  );
  if (!intermittent) return told;
  return told.map(
    (share, at) => (1 - wobbleShare) * share + (tellingVerdicts[at] === 'wobble' ? wobbleShare : 0),
  );
};

const tellsAs = (
  verdict: TellingVerdict,
  shown: ShownClass,
  missedAs: ShownClass,
  { missed, misjudged }: { readonly missed: number; readonly misjudged: number },
): number => {
  if (shown === missedAs) {
    return verdict === shown ? 1 - misjudged : misjudged / (tellingVerdicts.length - 1);
  }
  if (verdict === shown) return 1 - missed - misjudged;
  return verdict === missedAs ? missed : misjudged / (tellingVerdicts.length - 2);
};

export interface Pressed {
  readonly released: Shows;
  readonly pressed: Shows;
  /** Pressing changed nothing: both show the very same thing, whatever it is. */
  readonly unmoved: boolean;
  readonly overloadIsNormal: boolean;
}

const steadyFindings: readonly TellingFinding[] = ['steady-open', 'steady'];

/** One probability for each of `tellingFindings`; they sum to 1. */
export const findingProbabilities = (
  seen: Pressed,
  noise: { readonly falselyAnswers: number; readonly missesAnswer: number },
): number[] => {
  const truth = truths(seen);
  return tellingFindings.map((found) =>
    tellingFindings.reduce(
      (sum, is, at) => sum + (truth[at] as number) * findsAs(found, is, noise),
      0,
    ),
  );
};

/** Of the findings a test may end with: three answer, two do not. */
const findsAs = (
  found: TellingFinding,
  is: TellingFinding,
  noise: { readonly falselyAnswers: number; readonly missesAnswer: number },
): number => {
  const { falselyAnswers, missesAnswer } = noise;
  const isSteady = steadyFindings.includes(is);
  if (found === is) return 1 - falselyAnswers - missesAnswer;
  const others = isSteady ? 3 : 2;
  if (!steadyFindings.includes(found)) return falselyAnswers / others;
  return missesAnswer / (isSteady ? 1 : 2);
};

/** Probability that each finding is the true one. */
const truths = ({ released, pressed, unmoved, overloadIsNormal }: Pressed): number[] => {
  const shares = new Map<TellingFinding, number>();
  const add = (finding: TellingFinding, share: number): void =>
    void shares.set(finding, (shares.get(finding) ?? 0) + share);
  for (const from of shownClasses) {
    if (unmoved) add(findingFor(from, from, overloadIsNormal), released[from]);
    else
      for (const to of shownClasses)
        add(findingFor(from, to, overloadIsNormal), released[from] * pressed[to]);
  }
  return tellingFindings.map((finding) => shares.get(finding) ?? 0);
};

/** The finding a press test makes of two sides: loose and cracked are above normal, bridged below. */
const findingFor = (
  released: ShownClass,
  pressed: ShownClass,
  overloadIsNormal: boolean,
): TellingFinding => {
  const from = sideOf(released);
  const to = sideOf(pressed);
  if (from === 'above' && to === 'normal') return 'loose';
  if (from === 'normal' && to === 'above') return 'cracked';
  if (from === 'normal' && to === 'below') return 'bridged';
  if (from === 'below' && to === 'normal') return 'bridged';
  const isOpen = (shown: ShownClass): boolean =>
    shown === 'open' || (overloadIsNormal && shown === 'normal');
  return isOpen(released) && isOpen(pressed) ? 'steady-open' : 'steady';
};

const sideOf = (shown: ShownClass): 'normal' | 'above' | 'below' => {
  if (shown === 'normal') return 'normal';
  return shown === 'open' || shown === 'high' ? 'above' : 'below';
};
