// A line drawn as a chain: the places from pin to chip on a wire, under each how likely it is at fault. A part in
// the line stands in the wire, a branch hangs from it in round brackets.
import { type Chain, type ChainPlace, likeliestPlace } from '../../core/select/chain.js';
import type { Words } from '../../core/words/words.js';
import type { Theme } from '../theme.js';
import { type Line, type Span, span } from './line.js';

/** Two rows for each stretch that fits, and what else may explain the line. */
export const drawChain = (
  chain: Chain,
  width: number,
  words: Words,
  theme: Theme,
): readonly Line[] => {
  const worst = likeliestPlace(chain);
  const rows = stretches(chain.places, width - 2).flatMap((places, at): readonly Line[] => {
    const wire = theme.line.rule;
    const joined = places.map((place, n) => ({ place, before: n === 0 && at === 0 ? '' : wire }));
    return [
      [
        span(' '),
        ...joined.flatMap(({ place, before }) => nameSpans(place, before, place === worst, theme)),
      ],
      [
        span(' '),
        ...joined.flatMap(({ place, before }) => shareSpans(place, before, place === worst, theme)),
      ],
    ];
  });
  const rest = words.screen.chainRest(
    percent(chain.lead),
    percent(chain.other),
    percent(chain.none),
  );
  return [...rows, ...(rest === '' ? [] : [[span(` ${rest}`, theme.style.quiet)]])];
};

const nameSpans = (place: ChainPlace, before: string, isWorst: boolean, theme: Theme): Span[] => {
  const style = isWorst
    ? { ...theme.style.alarm }
    : place.kind === 'joint'
      ? theme.style.text
      : theme.style.strong;
  return [
    span(before.repeat(gap(before)), theme.style.faint),
    span(nameOf(place).padEnd(widthOf(place), ' '), style),
  ];
};

const shareSpans = (place: ChainPlace, before: string, isWorst: boolean, theme: Theme): Span[] => {
  const share = percent(place.probability);
  const text = share === 0 ? theme.line.dot : `${share} %`;
  const marked = isWorst ? `${theme.line.mark} ${text}` : text;
  const style = isWorst ? theme.style.accent : share === 0 ? theme.style.faint : theme.style.quiet;
  return [span(' '.repeat(gap(before))), span(marked.padEnd(widthOf(place)), style)];
};

const gap = (before: string): number => (before === '' ? 0 : 2);

const nameOf = ({ kind, name }: ChainPlace): string => (kind === 'branch' ? `(${name})` : name);

/** A share may be wider than a short name: "> 100 %". */
const leastWidth = 7;
const widthOf = (place: ChainPlace): number => Math.max(leastWidth, nameOf(place).length);

const percent = (probability: number): number => Math.round(100 * probability);

const stretches = (places: readonly ChainPlace[], width: number): readonly ChainPlace[][] => {
  const all: ChainPlace[][] = [];
  let room = 0;
  for (const place of places) {
    const needs = widthOf(place) + 2;
    const last = all.at(-1);
    if (last === undefined || needs > room) {
      all.push([place]);
      room = width - needs;
    } else {
      last.push(place);
      room -= needs;
    }
  }
  return all;
};
