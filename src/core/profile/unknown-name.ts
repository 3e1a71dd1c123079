// A name in a profile that leads nowhere.
import { nearestName } from '../nearest-name.js';
import { type JsonPath, type Problem, quoted } from '../problems.js';

/** Own names only: `constructor` is no line of a profile. */
export const has = (named: object | undefined, name: string): boolean =>
  named !== undefined && Object.hasOwn(named, name);

/** @param known the names that there are, for the fix. */
export const unknownName = (
  path: JsonPath,
  sort: string,
  name: string,
  known: readonly string[],
): Problem => {
  const near = nearestName(name, known);
  const what = `there is no ${sort} ${quoted(name)}`;
  if (near !== undefined) return { path, what, fix: `did you mean ${quoted(near)}?` };
  const some = known.slice(0, 8).map(quoted).join(', ');
  const more = known.length > 8 ? ', …' : '';
  return { path, what, fix: known.length === 0 ? `define it` : `define it, or use ${some}${more}` };
};
