// Long lines of text on a terminal, broken between words and not wherever its last column is.
import { wrapText } from '../ui/draw/line.js';

const usualColumns = 80;

/** What begins with blanks or a dash goes on under its first word. */
export const inColumns = (line: string, columns = usualColumns): readonly string[] => {
  const [begin = ''] = /^ *(?:- )?/u.exec(line) ?? [];
  const lines = wrapText(line.slice(begin.length), Math.max(20, columns - begin.length - 1));
  return lines.map((part, nth) => (nth === 0 ? begin : ' '.repeat(begin.length)) + part);
};
