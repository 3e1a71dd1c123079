// The job around the walk, folded from the session's events beside the walk's own state: of every field, caution
// and observation the last event counts, and nothing that was written is ever lost from the file.
import type { EventOf, WalkEvent } from '../events.js';
import type { IntakeFields } from './job-events.js';

export type Photo = EventOf<'photo-attached'>;
export type Caution = EventOf<'caution-confirmed'>;
export type Observed = EventOf<'symptom-observed'>;
export type Proposal = EventOf<'groups-proposed'>;
/** Measuring residual volts, or why it was left out. */
export type Residual = EventOf<'residual-measured'> | EventOf<'residual-skipped'>;

export interface Job {
  readonly intake: IntakeFields;
  /** One for each picture, by its hash. */
  readonly photos: readonly Photo[];
  /** One for each caution, as it was confirmed last. */
  readonly cautions: readonly Caution[];
  /** In order, so that a charge and what came after it are both there. */
  readonly residuals: readonly Residual[];
  /** One for each observation, as it was answered last. */
  readonly observed: readonly Observed[];
  readonly proposal: Proposal | null;
}

export const emptyJob: Job = {
  intake: {},
  photos: [],
  cautions: [],
  residuals: [],
  observed: [],
  proposal: null,
};

/** The job as it stands, as the events that would say it at once. */
export const jobEvents = (job: Job): readonly WalkEvent[] => [
  ...(Object.keys(job.intake).length === 0
    ? []
    : [{ type: 'intake-noted' as const, t: 0, ...job.intake }]),
  ...job.photos,
  ...job.cautions,
  ...job.residuals,
  ...job.observed,
  ...(job.proposal === null ? [] : [job.proposal]),
];

export const foldJob = (job: Job, event: WalkEvent): Job => {
  switch (event.type) {
    case 'intake-noted': {
      const { type: _type, t: _t, ...fields } = event;
      return { ...job, intake: { ...job.intake, ...intakeOf(fields) } };
    }
    case 'photo-attached':
      return { ...job, photos: lastOf(job.photos, event, ({ sha256 }) => sha256) };
    case 'caution-confirmed':
      return { ...job, cautions: lastOf(job.cautions, event, ({ caution }) => caution) };
    case 'residual-measured':
    case 'residual-skipped':
      return { ...job, residuals: [...job.residuals, event] };
    case 'symptom-observed':
      return { ...job, observed: lastOf(job.observed, event, ({ observation }) => observation) };
    case 'groups-proposed':
      return { ...job, proposal: event };
    default:
      return job;
  }
};

/** Without the number a stored event carries. */
const intakeOf = ({ ticket, device, symptom, history, seen, dataMatters }: IntakeFields) => ({
  ...(ticket === undefined ? {} : { ticket }),
  ...(device === undefined ? {} : { device }),
  ...(symptom === undefined ? {} : { symptom }),
  ...(history === undefined ? {} : { history }),
  ...(seen === undefined ? {} : { seen }),
  ...(dataMatters === undefined ? {} : { dataMatters }),
});

const lastOf = <T>(all: readonly T[], one: T, keyOf: (one: T) => string): readonly T[] => {
  const at = all.findIndex((known) => keyOf(known) === keyOf(one));
  return at === -1 ? [...all, one] : all.with(at, one);
};
