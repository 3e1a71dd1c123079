// Whether the files of a library entry are what they claim to be: read as strictly as a file on the desk.
import { basename } from 'node:path';
import { formatProblem, isError, quoted } from '../../core/problems.js';
import type { LibraryEntry } from '../../core/share/library-format.js';
import { checkFile } from '../../store/check-file.js';

/** What is wrong, in lines. */
export const checkEntry = (
  { kind, id }: Pick<LibraryEntry, 'kind' | 'id'>,
  paths: readonly string[],
): readonly string[] =>
  paths.flatMap((path) => {
    const name = basename(path);
    const wanted = name.endsWith('.jsonl') ? 'session' : kind;
    const found = checkFile(path);
    const errors = found.problems.filter(isError);
    if (errors.length > 0) return errors.map((problem) => formatProblem(name, problem));
    if (found.kind !== wanted) return [`${name}: this is no ${wanted}`];
    if (found.id !== undefined && found.id !== id) {
      return [`${name}: its id is ${quoted(found.id)}, the index says ${quoted(id)}`];
    }
    return [];
  });
