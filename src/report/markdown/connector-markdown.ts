// The connector as lines of text: pins and their verdictSigns, twenty to a line.

import { cleanText } from '../../core/clean-text.js';
import type { Connector, PinMark } from '../../core/report/document.js';
import { plain } from '../../core/words/report-phrase.js';
import { verdictSigns } from '../../core/words/verdict-signs.js';

const perLine = 20;

export const connectorMarkdown = ({ rows, legend }: Connector): string => {
  const lines = rows.flatMap(({ title, pins }) => [cleanText(plain(title), 80), ...rowLines(pins)]);
  const meanings = legend
    .map(({ verdict, word }) => `${verdictSigns[verdict]} ${word}`)
    .join('   ');
  return ['~~~~text', ...lines, '', meanings, '~~~~'].join('\n');
};

const rowLines = (pins: readonly PinMark[]): readonly string[] => {
  const lines: string[] = [];
  for (let at = 0; at < pins.length; at += perLine) {
    const shown = pins.slice(at, at + perLine);
    const names = shown.map(({ pin }) => cleanText(pin, 40));
    const width = Math.max(...names.map((pin) => pin.length));
    lines.push(names.map((pin) => pin.padStart(width)).join(' '));
    lines.push(shown.map(({ verdict }) => verdictSigns[verdict].padStart(width)).join(' '));
  }
  return lines;
};
