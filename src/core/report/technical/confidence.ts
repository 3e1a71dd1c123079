// Confidence in words and number.
import { certaintyOf } from '../../walk/certainty.js';
import type { PinRecord } from '../../walk/state.js';
import { type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalWords } from '../../words/report-words-technical.js';
import { writtenPercent } from '../written.js';

type Judged = Pick<PinRecord, 'verdict' | 'confidence'>;

export const confidenceWord = (judged: Judged, { confidence: words }: TechnicalWords): string =>
  words[certaintyOf(judged)];

export const confidenceIn = (judged: Judged, technical: TechnicalWords): Phrase =>
  say`${confidenceWord(judged, technical)} (${writtenPercent(judged.confidence)})`;
