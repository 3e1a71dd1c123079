// Writes down what a link tells its listener, and waits for things to come true.
import type { Link } from '../../src/session/ports.js';

export interface Recorded {
  readonly told: string[];
  readonly lines: string[];
  /** Times of everything told, in order. */
  readonly times: number[];
}

export const recordLink = (link: Link): Recorded => {
  const told: string[] = [];
  const lines: string[] = [];
  const times: number[] = [];
  link.open({
    opened: (t, again) => {
      times.push(t);
      told.push(again ? 'opened again' : 'opened');
    },
    frame: (t, frame) => {
      times.push(t);
      lines.push('overlong' in frame ? `overlong ${frame.text}` : frame.text);
    },
    lost: (t, reason) => {
      times.push(t);
      told.push(`lost: ${reason}`);
    },
    failed: (t, reason) => {
      times.push(t);
      told.push(`failed: ${reason}`);
    },
    ended: (t) => {
      times.push(t);
      told.push('ended');
    },
  });
  return { told, lines, times };
};

/** Polls until `holds`; the failure names what was waited for. */
export const until = async (
  what: string,
  holds: () => boolean,
  withinMs = 30_000,
): Promise<void> => {
  const deadline = performance.now() + withinMs;
  while (!holds()) {
    if (performance.now() > deadline) throw new Error(`waited in vain: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};
