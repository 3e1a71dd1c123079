// Collects the suspects of a board while its routes are laid out: one for each key, however many routes pass it.
import type { Sort } from './priors.js';
import type { RouteStop, Suspect } from './suspect-model.js';

export interface SuspectDraft {
  readonly where: Suspect['where'];
  readonly id: string;
  readonly sort: Sort;
  readonly lines: Set<string>;
  readonly pressedAt: Set<string>;
  /** The profile's own figure, if it has one. */
  readonly prior: number | null;
}

export interface SuspectRegister {
  readonly drafts: readonly SuspectDraft[];
  /** How many routes pass a stop of that key. */
  readonly passes: ReadonlyMap<string, number>;
  /** Index of the suspect of that key, made when it is new; the line and what presses it are added. */
  readonly at: (
    key: string,
    line: string,
    presses: readonly string[],
    named: Pick<SuspectDraft, 'where' | 'id' | 'sort' | 'prior'>,
  ) => number;
}

/** A part is the same suspect where it sits in a line, beside one, or at its end. */
export const stopKey = ({ kind, id }: RouteStop): string =>
  `${kind === 'joint' ? 'joint' : 'part'} ${id}`;

export const createRegister = (ways: readonly (readonly RouteStop[])[]): SuspectRegister => {
  const drafts: SuspectDraft[] = [];
  const byKey = new Map<string, number>();
  const passes = new Map<string, number>();
  for (const stops of ways)
    for (const key of new Set(stops.map(stopKey))) passes.set(key, (passes.get(key) ?? 0) + 1);
  return {
    drafts,
    passes,
    at: (key, line, presses, named) => {
      const index = byKey.get(key) ?? drafts.length;
      byKey.set(key, index);
      const draft = drafts[index] ?? { ...named, lines: new Set(), pressedAt: new Set() };
      drafts[index] = draft;
      draft.lines.add(line);
      for (const part of presses) draft.pressedAt.add(part);
      return index;
    },
  };
};
