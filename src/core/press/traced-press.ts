// What a free press came to, as the event that the session file keeps.
import type { EventOf } from '../events.js';
import type { FreePress } from './free-press.js';

export const tracedPress = (
  t: number,
  line: string,
  part: string | null,
  { rests, excursions, medianDwellS, repeats, marked }: FreePress,
): EventOf<'press-traced'> => ({
  type: 'press-traced',
  t,
  line,
  part,
  rests,
  excursions: excursions.map(({ fromS, toS, value }) => ({ from: fromS, to: toS, value })),
  medianDwell: medianDwellS,
  repeats,
  marked: marked === null ? null : { ...marked },
});
