// How many columns a text takes. The same words, labels and digits are drawn frame after frame, and counting their
// columns afresh costs as much as everything else that is drawn.
import stringWidth from 'string-width';

const known = new Map<string, number>();
/** Texts remembered before all are forgotten; a reading never runs out of new digits. */
const mostKnown = 4000;

export const columnsOf = (text: string): number => {
  const found = known.get(text);
  if (found !== undefined) return found;
  if (known.size >= mostKnown) known.clear();
  const columns = stringWidth(text);
  known.set(text, columns);
  return columns;
};
