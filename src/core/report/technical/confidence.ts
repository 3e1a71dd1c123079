// Confidence in words and number. The words keep to what the number says.
import { leastConfidence } from '../../walk/judge.js';
import type { PinRecord } from '../../walk/state.js';
import { type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalWords } from '../../words/report-words-technical.js';
import { writtenPercent } from '../written.js';

const verySure = 0.99;

type Judged = Pick<PinRecord, 'verdict' | 'confidence'>;

export const confidenceWord = (
  { verdict, confidence }: Judged,
  { confidence: words }: TechnicalWords,
): string => {
  if (verdict === 'unsure' || confidence < leastConfidence) return words.unsure;
  return confidence >= verySure ? words.very : words.sure;
};

export const confidenceIn = (judged: Judged, technical: TechnicalWords): Phrase =>
  say`${confidenceWord(judged, technical)} (${writtenPercent(judged.confidence)})`;
