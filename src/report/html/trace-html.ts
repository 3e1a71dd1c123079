// The trace of a press test: readings over time, overload along the top, the limits of a good board as a band, and
// behind it the time from each cue to press to its cue to release. Time runs from left to right in every language.
import type { Trace } from '../../core/report/document.js';
import { lowerLimitAt, upperLimitAt } from '../../core/select/scale.js';
import { escapeHtml } from './escape-html.js';
import { phraseHtml } from './phrase-html.js';

const width = 680;
const height = 104;
/** Overload has a line of its own above the axis. */
const overloadAt = 12;
const top = 24;
const bottom = 84;

export const traceHtml = (trace: Trace): string => {
  const { caption, from, to, points, presses, hasLimits, words } = trace;
  const x = (t: number): number => round((width * (t - from)) / Math.max(to - from, 1e-9));
  const shades = presses.map(
    (press) =>
      `<rect class="press" x="${clamp(x(press.from))}" y="0" width="${round(clamp(x(press.to)) - clamp(x(press.from)))}" height="${bottom + 4}"/>`,
  );
  const band = hasLimits
    ? `<rect class="band" x="0" y="${y(upperLimitAt)}" width="${width}" height="${round(y(lowerLimitAt) - y(upperLimitAt))}"/>`
    : '';
  const seconds = [0, 0.25, 0.5, 0.75, 1].map((share) => {
    const anchor = share === 0 ? 'start' : share === 1 ? 'end' : 'middle';
    const at = ((to - from) * share).toFixed(1);
    return `<text class="tick" x="${round(width * share)}" y="${height - 4}" text-anchor="${anchor}">${at} s</text>`;
  });
  const keys = [
    `<span class="key press"></span> ${escapeHtml(words.press)}`,
    ...(hasLimits ? [`<span class="key band"></span> ${escapeHtml(words.limits)}`] : []),
    `<span class="key over"></span> ${escapeHtml(words.overload)}`,
  ];
  return `<figure class="trace"><figcaption>${phraseHtml(caption)}</figcaption>
<svg dir="ltr" aria-hidden="true" viewBox="0 0 ${width} ${height}">${shades.join('')}${band}<path class="axis" d="M0 ${bottom + 4}H${width}"/>${lineHtml(points, x)}${seconds.join('')}</svg>
<p class="keys">${keys.map((key) => `<span>${key}</span>`).join('')}</p></figure>`;
};

/** Values are joined; overload is drawn as a line of its own, so that contact and none are plain to see. */
const lineHtml = (points: Trace['points'], x: (t: number) => number): string => {
  let values = '';
  let over = '';
  points.forEach(({ t, at }, index) => {
    const before = points[index - 1];
    const joins = before !== undefined && (before.at === null) === (at === null);
    const move = joins ? 'L' : 'M';
    // A single reading between two of the other kind is a stroke of one pixel, not nothing.
    const stub = joins ? '' : 'h1';
    if (at === null) over += `${move}${x(t)} ${overloadAt}${stub}`;
    else values += `${move}${x(t)} ${y(at)}${stub}`;
  });
  return `<path class="over" d="${over}"/><path class="value" d="${values}"/>`;
};

const y = (at: number): number => round(bottom - at * (bottom - top));
const clamp = (of: number): number => Math.min(width, Math.max(0, of));
const round = (of: number): number => Math.round(of * 10) / 10;
