// A free press test while it goes on: everything is kept for the end, and each change that lasts is noticed at
// once, so that a person who does not look hears whether the line reads.
import type { Input } from '../inputs.js';
import { isFault } from '../reading.js';
import { type FreePress, freePress } from './free-press.js';
import type { PressSetup } from './press-setup.js';
import { appended, emptyRecord, type InputRecord, recorded } from './record.js';
import { isPassing } from './runs.js';
import { type Seen, type Side, seeReading } from './sides.js';
import { noUpdates, type Updates, updateSeconds, updateSeen } from './update-interval.js';

export interface FreeStage {
  readonly setup: PressSetup;
  readonly record: InputRecord;
  readonly updates: Updates;
  /** The present run of readings that agree whether the line is at its normal. */
  readonly run: {
    readonly side: Side;
    readonly from: number;
    readonly to: number;
    readonly readings: number;
    readonly value: number | null;
  } | null;
  /** Whether the line was last told to be at its normal; null before the first. */
  readonly told: boolean | null;
  /** How often it was told to have left where it stood first. */
  readonly changes: number;
  /** The technician says that the tool presses. */
  readonly pressing: boolean;
}

export const beginFree = (setup: PressSetup): FreeStage => ({
  setup,
  record: emptyRecord,
  updates: noUpdates,
  run: null,
  told: null,
  changes: 0,
  pressing: false,
});

export const takeInFree = (stage: FreeStage, input: Input): FreeStage => {
  const kept = { ...stage, record: appended(stage.record, input) };
  if (input.kind === 'act') {
    const { act } = input.act;
    return act === 'pressing' || act === 'released'
      ? { ...kept, pressing: act === 'pressing' }
      : stage;
  }
  if (input.kind !== 'reading') return stage;
  const { reading } = input;
  const updates = isFault(reading) ? stage.updates : updateSeen(stage.updates, reading.t);
  const seen = seeReading(stage.setup, stage.setup.normal, reading);
  return seen === null ? { ...kept, updates } : { ...kept, updates, run: runWith(stage.run, seen) };
};

const runWith = (run: FreeStage['run'], { t, side, value }: Seen): FreeStage['run'] =>
  run !== null && isContact(run.side) === isContact(side)
    ? { side, from: run.from, to: t, readings: run.readings + 1, value }
    : { side, from: t, to: t, readings: 1, value };

const isContact = (side: Side): boolean => side === 'normal';

export interface Turn {
  /** The line reads its normal; else it is open or short. */
  readonly reads: boolean;
  /** The latest reading, in the function's unit; null for overload. */
  readonly value: number | null;
}

/** A change that has lasted too long to be a bounce or a slip and is not told yet, or null. */
export const turnOf = ({ run, told, updates }: FreeStage): Turn | null => {
  if (run === null) return null;
  const reads = isContact(run.side);
  if (reads === told || isPassing({ ...run, own: [] }, updateSeconds(updates))) return null;
  return { reads, value: run.value };
};

export const turnTold = (stage: FreeStage, reads: boolean): FreeStage => ({
  ...stage,
  told: reads,
  changes: stage.told === null ? 0 : stage.changes + 1,
});

/** What the whole record comes to. */
export const freeOutcome = ({ setup, record }: FreeStage): FreePress =>
  freePress(setup, recorded(record));
