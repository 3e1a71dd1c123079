// What may be at fault, told as soon as something is not normal and whenever what is known of it changes: by the
// reading or act that changed it, so that a rerun tells the same.
import type { EventOf, WalkEvent } from '../events.js';
import { boardWeigher } from '../suspects/board-weigher.js';
import { type SuspectsRanked, suspectsRanked } from '../suspects/suspects-ranked.js';
import type { Accused, WalkState } from './state.js';
import type { Teller } from './teller.js';

/** Told when the session is closed, as it stands then. */
export const tellSuspects = (teller: Teller, t: number): void => {
  const { state } = teller;
  const isSuspicious = state.pins.some(
    ({ verdict }, at) => isBad(verdict) && state.plan.pins[at]?.board !== 'donor',
  );
  if (isSuspicious) teller.tell({ type: 'suspects-ranked', t, ...rank(state) });
};

/** Told once a decision, where it has changed what is known of anything that is not normal. */
export const tellSuspectsAnew = (teller: Teller): void => {
  const { state, events } = teller;
  if (!events.some((event) => isNews(event, state.ranked))) return;
  const ranking = rank(state);
  const quiet = isQuiet(ranking, state.accused) ? ({ quiet: true } as const) : {};
  teller.tell({ type: 'suspects-ranked', t: state.t, ...ranking, ...quiet });
};

/** Makes the walk ready to weigh, which takes a moment the first time. */
export const readySuspects = ({ profile, plan }: WalkState): void => {
  boardWeigher(profile, plan)([]);
};

const rank = ({ profile, plan, evidence }: WalkState): SuspectsRanked =>
  suspectsRanked(boardWeigher(profile, plan)(evidence));

/** Said aloud only where the likeliest is another than before, and likelier than all others together. */
const isQuiet = ({ suspects: [likeliest] }: SuspectsRanked, accused: Accused | null): boolean =>
  likeliest === undefined ||
  likeliest.probability <= 0.5 ||
  (likeliest.where === accused?.where && likeliest.id === accused.id);

/**
 * A line that reads normal is news only where a lead or a place on that line is a suspect: elsewhere it changes
 * next to nothing.
 */
const isNews = (event: WalkEvent, ranked: EventOf<'suspects-ranked'> | null): boolean => {
  if (event.type === 'press-judged' || event.type === 'place-judged') return true;
  if (event.type !== 'pin-judged' || event.board === 'donor') return false;
  if (isBad(event.verdict)) return true;
  return (
    ranked?.suspects.some(({ where, lines }) => where === 'lead' || lines.includes(event.line)) ??
    false
  );
};

const isBad = (verdict: EventOf<'pin-judged'>['verdict']): boolean =>
  verdict !== 'normal' && verdict !== 'unread' && verdict !== 'unsure';
