// A reading seen as one shape with fields that may be missing. Asking which kind a reading is, one kind after another,
// costs more than folding it; here a field is looked up and is there or not.
import type {
  BlankReading,
  FaultReading,
  OverloadReading,
  Reading,
  ValueReading,
} from '../reading.js';

export type Shown = Partial<
  Omit<ValueReading, 't'> &
    Pick<OverloadReading, 'overload'> &
    Pick<BlankReading, 'blank'> &
    Pick<FaultReading, 'fault'>
>;

export const shownBy = (reading: Reading): Shown => reading as Shown;
