// The press test of a record: its cues if it has any, otherwise the technician's own marks. The same readings
// and cues give the same result as the live test gave.
import type { CueName, Input } from '../inputs.js';
import { inputTime } from '../inputs.js';
import type { PressResult } from './press-result.js';
import type { PressSetup } from './press-setup.js';
import { createPressTest, finishPressTest, pressStep } from './press-test.js';

/** A hand marks its press as it makes it, up to so much before or after; a cue comes before the press. */
const markToCueS = 0.4;

/** All cycles of the record count, up to the eighth, also those after the test could have stopped. */
export const judgeRecord = (setup: PressSetup, inputs: readonly Input[]): PressResult => {
  const isPaced = inputs.some(({ kind }) => kind === 'cue');
  const told = isPaced ? inputs : marksAsCues(inputs);
  return finishPressTest(
    told.reduce((state, input) => pressStep(state, input).state, createPressTest(setup)),
  );
};

const cueOf = (input: Input): CueName | null => {
  if (input.kind !== 'act') return null;
  if (input.act.act === 'pressing') return 'press';
  return input.act.act === 'released' ? 'release' : null;
};

const marksAsCues = (inputs: readonly Input[]): Input[] =>
  inputs
    .map((input): Input => {
      const cue = cueOf(input);
      return cue === null ? input : { kind: 'cue', t: inputTime(input) - markToCueS, cue };
    })
    .sort((a, b) => inputTime(a) - inputTime(b));
