// Which part a joint belongs to, so that pressing the part acts on the joint: the part its name begins with,
// or, where the name tells nothing, the parts next to it along the line.
import type { RouteStop } from './suspect-model.js';

/**
 * @param known Names of all parts, chips and the connector.
 * @example pressedAt('FL1 pad 4', ['FL1', 'J7'], [], 0) // ['FL1']
 */
export const pressedAt = (
  joint: string,
  known: readonly string[],
  stops: readonly RouteStop[],
  at: number,
): string[] => {
  const named = known
    .filter((id) => joint.startsWith(id) && !/[\p{L}\p{N}]/u.test(joint.charAt(id.length)))
    .sort((a, b) => b.length - a.length)[0];
  if (named !== undefined) return [named];
  const isPart = ({ kind }: RouteStop): boolean => kind === 'part' || kind === 'chip';
  const before = stops.slice(0, at).findLast(isPart);
  const after = stops.slice(at + 1).find(isPart);
  return [before, after].flatMap((stop) => (stop === undefined ? [] : [stop.id]));
};
