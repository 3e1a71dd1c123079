// Over many boards: which places failed after which symptom. Several sessions of one board count once, with the
// best that any of them knows. Keeps a few words for each board and nothing of its readings.
import { type BoardCase, type CauseEvidence, evidences } from './board-case.js';

export interface FailureRow {
  readonly profile: string;
  /** Null where no symptom was noted. */
  readonly symptom: string | null;
  readonly place: string;
  /** Boards, by how well the place is known to have been at fault. */
  readonly counts: Readonly<Record<CauseEvidence, number>>;
}

export interface History {
  /** Every profile with its boards: walked to the end or closed, and of these with a cause that is sure enough. */
  readonly boards: readonly {
    readonly profile: string;
    readonly boards: number;
    readonly explained: number;
  }[];
  /** By profile, then what failed most often first. */
  readonly rows: readonly FailureRow[];
}

export interface CaseTally {
  add(found: BoardCase): void;
  history(): History;
}

interface Board {
  readonly profile: string;
  symptom: string | null;
  done: boolean;
  causes: ReadonlyMap<string, CauseEvidence>;
}

export const tallyCases = (): CaseTally => {
  const boards = new Map<string, Board>();
  return {
    add: ({ board, profile, symptom, done, causes }) => {
      const known = boards.get(board);
      if (known === undefined) {
        boards.set(board, { profile, symptom, done, causes });
        return;
      }
      known.symptom ??= symptom;
      known.done ||= done;
      if (rank(causes) < rank(known.causes)) known.causes = causes;
    },
    history: () => sum([...boards.values()]),
  };
};

/** 0 for the best known causes, more for worse. */
const rank = (causes: ReadonlyMap<string, CauseEvidence>): number => {
  const [first] = causes.values();
  return first === undefined ? evidences.length : evidences.indexOf(first);
};

const sum = (boards: readonly Board[]): History => {
  const rows = new Map<string, { row: FailureRow; counts: Record<CauseEvidence, number> }>();
  const totals = new Map<string, { boards: number; explained: number }>();
  for (const { profile, symptom, done, causes } of boards) {
    const total = totals.get(profile) ?? { boards: 0, explained: 0 };
    totals.set(profile, total);
    const isSure = rank(causes) <= evidences.indexOf('found');
    if (done || isSure) total.boards += 1;
    if (isSure) total.explained += 1;
    for (const [place, evidence] of causes) {
      const key = JSON.stringify([profile, symptom, place]);
      const known = rows.get(key) ?? newRow(profile, symptom, place);
      rows.set(key, known);
      known.counts[evidence] += 1;
    }
  }
  return {
    boards: [...totals]
      .map(([profile, total]) => ({ profile, ...total }))
      .sort((a, b) => compare(a.profile, b.profile)),
    rows: [...rows.values()].map(({ row }) => row).sort(inOrder),
  };
};

const newRow = (profile: string, symptom: string | null, place: string) => {
  const counts = { confirmed: 0, found: 0, suspected: 0 };
  return { row: { profile, symptom, place, counts }, counts };
};

const sureOf = ({ counts }: FailureRow): number => counts.confirmed + counts.found;

const inOrder = (a: FailureRow, b: FailureRow): number =>
  compare(a.profile, b.profile) ||
  sureOf(b) - sureOf(a) ||
  b.counts.suspected - a.counts.suspected ||
  compare(a.symptom ?? '', b.symptom ?? '') ||
  compare(a.place, b.place);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
