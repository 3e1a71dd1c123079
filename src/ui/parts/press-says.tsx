// What pressing did, in words, with how likely chance alone would do it: of all places compared, or of the place
// judged last.
import { shamPlace } from '../../core/press/press-stage.js';
import type { PlaceView, PressView } from '../../core/select/press.js';
import { describeTrace } from '../../core/words/describe-press.js';
import { writeChance } from '../../core/words/write-chance.js';
import type { Surroundings } from '../context.js';
import { type Line, span, wrapText } from '../draw/line.js';
import { verdictOfFinding } from './press-style.js';

export const pressSays = (
  view: PressView,
  surroundings: Surroundings,
  width: number,
): readonly Line[] => {
  const { traced } = view;
  if (traced !== null) {
    const text = describeTrace(traced, surroundings.words);
    return wrapText(text, width - 2).map((line) => [
      span(` ${line}`, surroundings.theme.style.strong),
    ]);
  }
  const telling = tellingPlace(view);
  const found = telling === undefined ? [] : [foundLine(telling, surroundings)];
  if (view.compared === null || view.places.length < 2) return found;
  const { theme, words } = surroundings;
  const { outcome, parts } = view.compared;
  const says = words.screen.press.compared(outcome, parts.join(', '));
  return [...found, [span(` ${says}`, theme.style.strong)]];
};

/** When all are compared the part that answers most, otherwise the place judged last. */
const tellingPlace = ({ places, compared, latest }: PressView): PlaceView | undefined => {
  const part = compared?.outcome === 'one' ? compared.parts[0] : undefined;
  return places.find(({ place }) => part !== undefined && place === part) ?? latest;
};

const foundLine = ({ place, result }: PlaceView, { theme, words }: Surroundings): Line => {
  if (result === null) return [];
  const { press } = words.screen;
  const { finding, pValue, adjustedPValue } = result;
  return [
    span(
      ` ${press.says(finding, place, place === shamPlace)}`,
      theme.verdict[verdictOfFinding[finding]],
    ),
    span(
      ` ${theme.line.dot} ${press.chance(writeChance(pValue), writeChance(adjustedPValue))}`,
      theme.style.quiet,
    ),
  ];
};
