// What the technician did beside probing, what could not be carried out, and where the walk put itself right.
import type { EventOf, Numbered } from '../events.js';

export type ActEntry =
  | EventOf<'act-taken'>
  | EventOf<'act-refused'>
  | EventOf<'walk-realigned'>
  | EventOf<'ground-doubted'>;

export interface ActLog {
  take(event: Numbered): void;
  readonly entries: readonly ActEntry[];
}

export const createActLog = (): ActLog => {
  const entries: ActEntry[] = [];
  return {
    entries,
    take(event) {
      switch (event.type) {
        case 'act-taken':
        case 'act-refused':
        case 'walk-realigned':
        case 'ground-doubted':
          entries.push(event);
          break;
        default:
      }
    },
  };
};
