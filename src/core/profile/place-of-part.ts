// Where a stop of a chain names a part, in the line or beside it.
import type { JsonPath } from '../problems.js';
import type { ChainStop } from './profile-format.js';

export const placeOfPart = (stop: ChainStop): { part: string; path: JsonPath } | undefined => {
  if ('part' in stop) return { part: stop.part, path: ['part'] };
  if ('shunt' in stop) return { part: stop.shunt.part, path: ['shunt', 'part'] };
  return undefined;
};
