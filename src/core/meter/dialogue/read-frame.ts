// Turns a frame into a reading, and notices when line after line cannot be read: a sign of a wrong speed or a
// wrong driver that no single fault shows.
import { cleanText } from '../../clean-text.js';
import type { Frame } from '../../framing.js';
import { isFault, type Reading } from '../../reading.js';
import { garbledWords } from '../../words/english-meter.js';
import type { Asked, MeterDecoder } from '../driver-decoder.js';
import type { DialogueEffect } from './dialogue-types.js';

const garbledAfter = 10;
const longestFault = 120;

export const readFrame = (t: number, frame: Frame, decoder: MeterDecoder, asked: Asked): Reading =>
  'overlong' in frame
    ? { t, fault: cleanText(`line too long: ${frame.text}`, longestFault) }
    : decoder.decode(t, frame.text, asked);

/** Faults in a row with this reading counted in, and what to do about it. */
export const heardReading = (
  reading: Reading,
  faultsBefore: number,
): { readonly faults: number; readonly effects: readonly DialogueEffect[] } => {
  const faults = isFault(reading) ? faultsBefore + 1 : 0;
  const effects: DialogueEffect[] = [{ effect: 'reading', reading }];
  if (isFault(reading) && faults === garbledAfter) {
    const text = garbledWords(garbledAfter, reading.fault);
    effects.push({ effect: 'says', t: reading.t, says: 'error', text });
  }
  return { faults, effects };
};
