// Confidence in words and number. The words keep to what the number says.
import { leastConfidence } from '../../walk/judge.js';
import type { PinRecord } from '../../walk/state.js';
import { type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalWords } from '../../words/report-words-technical.js';
import { writtenPercent } from '../written.js';

const verySure = 0.99;

export const confidenceIn = (
  { verdict, confidence }: Pick<PinRecord, 'verdict' | 'confidence'>,
  { confidence: words }: TechnicalWords,
): Phrase => {
  if (verdict === 'unread') return '';
  if (verdict === 'unsure' || confidence < leastConfidence) {
    return say`${words.unsure} (${writtenPercent(confidence)})`;
  }
  const word = confidence >= verySure ? words.very : words.sure;
  return say`${word} (${writtenPercent(confidence)})`;
};
