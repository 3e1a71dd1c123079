// What learning tells a person, in English. Names of boards arrive cleaned; those of pins and lines are a profile's.

import { type LearnedLine, leastBoardsForInterval } from '../learn/learn-line.js';
import type { StrayPin } from '../learn/line-values.js';
import type { OutlyingBoard } from '../learn/outlying-boards.js';
import type { BoardRefusal } from '../learn/refuse-boards.js';
import type { ApartValue } from '../learn/sort-line.js';
import { formatReading } from '../measure/format-reading.js';
import { quoted } from '../problems.js';
import { type MeasureFunction, siUnit } from '../reading.js';

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;
const percent = (fraction: number): string => `${Number((100 * fraction).toPrecision(2))} %`;

const shown = (value: number | null, measure: MeasureFunction): string =>
  value === null ? 'overload' : formatReading(value, null, siUnit(measure));

/** How much, or how little, so many boards prove. */
export const whatBoardsProve = (boards: number, factor: number | null, span: number): string => {
  const more = `Limits keep the usual tolerance; ${leastBoardsForInterval} boards or more give limits of their own.`;
  if (factor === null) return `One board does not tell how good boards differ. ${more}`;
  const k = factor.toPrecision(3);
  if (boards >= leastBoardsForInterval) {
    return `Limits hold 95 % of good boards with 95 % confidence (${count(boards, 'board')}, ${k} standard deviations either way).`;
  }
  return `${boards} boards prove little: what they span is sure (95 %) to hold only ${percent(span)} of good boards, and limits from them alone would lie ${k} standard deviations away. ${more}`;
};

export const lineLearned = (learned: LearnedLine, measure: MeasureFunction): string => {
  const { line } = learned;
  switch (learned.outcome) {
    case 'overload':
      return `${line}: overload (${count(learned.boards, 'board')})`;
    case 'kept':
      return learned.because === 'not-read'
        ? `${line}: not read, left as it was`
        : `${line}: the boards contradict one another, left as it was`;
    case 'value': {
      const { nominal, tolerance, boards, by, isTooScattered } = learned;
      const doubt = isTooScattered ? '; the boards scatter further than that' : '';
      const how = by === 'usual' ? ', usual tolerance' : '';
      return `${line}: ${shown(nominal, measure)} ± ${percent(tolerance)} (${count(boards, 'board')}${how})${doubt}`;
    }
  }
};

const apartWords: Readonly<Record<ApartValue['because'], string>> = {
  conducts: 'where most boards read overload',
  'conducts-not': 'where most boards read a value',
  'far-off': 'far from the other boards',
  'other-range': 'read on another range',
  'next-to-nothing': 'which no good board does',
};

export const valueApart = (
  line: string,
  { board, value, because }: ApartValue,
  measure: MeasureFunction,
): string => `${line}: ${board} reads ${shown(value, measure)}, ${apartWords[because]}`;

export const pinStrays = (
  { board, pin, line, value }: StrayPin,
  measure: MeasureFunction,
): string =>
  `${line}: pin ${pin} of ${board} reads ${shown(value, measure)}, more than another pin of the line; left out`;

export const boardOutlies = (outlying: OutlyingBoard, isKept: boolean): string => {
  const { board } = outlying;
  const fate = isKept ? 'kept' : 'left out';
  switch (outlying.because) {
    case 'all-lines-shifted': {
      const { by } = outlying;
      return `${board}: reads ${percent(Math.abs(by))} ${by > 0 ? 'more' : 'less'} on all lines than the other boards (another meter, or warm?); ${fate}`;
    }
    case 'many-lines-off':
      return `${board}: ${outlying.lines} of ${outlying.of} lines are off; is it a good board? ${fate === 'kept' ? 'Kept' : 'Left out'}`;
    case 'two-disagree':
      return `${board}: disagrees with the other board on ${outlying.lines} of ${outlying.of} lines; a third board would tell which is off`;
  }
};

export const boardRefused = (refusal: BoardRefusal): string => {
  const { board } = refusal;
  switch (refusal.because) {
    case 'nothing-read':
      return `${board}: no pin was read; leave it out`;
    case 'other-function':
      return `${board}: measured ${refusal.is}, but ${refusal.wanted} is to be learned; leave it out, or give --function ${refusal.is}`;
    case 'other-polarity':
      return `${board}: measured with ${refusal.is}, but ${refusal.wanted} is to be learned; leave it out, or give --polarity ${refusal.is}`;
    case 'other-connector': {
      const { pin, line, profileLine } = refusal;
      const there = profileLine === null ? 'has no such pin' : `has ${quoted(profileLine)} there`;
      return `${board}: pin ${quoted(pin)} carries ${quoted(line)}, but the profile ${there}; give the profile that was walked`;
    }
    case 'same-board':
      return `${board}: holds the same readings as ${refusal.as}; a board counts once`;
  }
};

export const simulatedBoards = 'Readings were simulated: the profile is marked as demo.';

/** @param file cleaned; null where none was asked for. */
export const profileWritten = (id: string, file: string | null): string =>
  file === null
    ? 'Nothing written; give --out FILE to write the profile.'
    : `Profile ${id} written to ${file}`;
