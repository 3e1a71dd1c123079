// A driver's line pattern, compiled to run in time linear in the line's length: no pattern in a file can hang
// the program. Look-arounds and back-references are therefore refused.
import { RE2JS } from 're2js';

/** The group texts of a full match, without the blanks around them; a group that took no part is ''. */
export type MatchedGroups = (name: string) => string;

export interface LinePattern {
  readonly groupNames: readonly string[];
  /** Null unless the pattern matches the whole text. */
  match(text: string): MatchedGroups | null;
}

/** @throws SyntaxError with the place in the pattern when it does not compile. */
export const compilePattern = (source: string): LinePattern => {
  const pattern = compiled(source);
  const groupNames = Object.keys(pattern.namedGroups());
  return {
    groupNames,
    match: (text) => {
      const matcher = pattern.matcher(text);
      if (!matcher.matches()) return null;
      const groups = new Map(groupNames.map((name) => [name, (matcher.group(name) ?? '').trim()]));
      return (name) => groups.get(name) ?? '';
    },
  };
};

const compiled = (source: string): RE2JS => {
  try {
    return RE2JS.compile(source);
  } catch (error) {
    throw new SyntaxError(error instanceof Error ? error.message : String(error));
  }
};
