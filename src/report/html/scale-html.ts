// A reading between the limits of its line: the band in the middle, the reading as a dot, twice its standard
// uncertainty to both sides. The figures beside it say the same, so it is silent for a screen reader.
import type { ScaleMark } from '../../core/report/document.js';
import { lowerLimitAt, upperLimitAt } from '../../core/select/scale.js';

const width = 84;
const height = 14;
const margin = 7;
const middle = height / 2;

export const scaleHtml = ({ at, beyond, from, to, verdict }: ScaleMark): string => {
  const [low, high] = [place(lowerLimitAt), place(upperLimitAt)];
  const band = `<rect class="band" x="${low}" y="3" width="${round(high - low)}" height="${height - 6}"/>`;
  const axis = `<path class="axis" d="M${margin} ${middle}H${width - margin}"/>`;
  const limits = `<path class="limit" d="M${low} 1.5v${height - 3}M${high} 1.5v${height - 3}"/>`;
  const spread = `<path class="spread" d="M${place(from)} ${middle}H${place(to)}"/>`;
  return `<svg class="scale ${verdict}" dir="ltr" aria-hidden="true" viewBox="0 0 ${width} ${height}">${band}${axis}${limits}${spread}${dot(at, beyond)}</svg>`;
};

const dot = (at: number, beyond: ScaleMark['beyond']): string => {
  const x = place(at);
  if (beyond === null) return `<circle class="dot" cx="${x}" cy="${middle}" r="3.2"/>`;
  const tip = beyond === 'above' ? 5.5 : -5.5;
  return `<path class="dot" d="M${x} ${middle - 4.5}l${tip} 4.5l${-tip} 4.5z"/>`;
};

const place = (at: number): number => round(margin + at * (width - 2 * margin));
const round = (of: number): number => Math.round(of * 10) / 10;
