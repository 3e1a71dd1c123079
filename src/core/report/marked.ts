// A verdict with its word, and a pin with its verdict, as forms draw them.
import type { Verdict } from '../verdict.js';
import type { SharedWords } from '../words/report-words.js';
import type { Marked, PinMark } from './document.js';
import type { PinFacts } from './pin-facts.js';

export const marked = (verdict: Verdict, shared: SharedWords): Marked => ({
  verdict,
  word: shared.verdict[verdict],
});

export const markOf = ({ planned, record }: PinFacts, shared: SharedWords): PinMark => ({
  ...marked(record.verdict, shared),
  pin: planned.pin,
  line: planned.line,
});
