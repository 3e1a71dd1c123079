// A port that has hung up is noticed by what it answers, while nothing is heard.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type HangUpWatch, watchHangUp } from '../../src/link/hang-up-watch.js';

const noLines = new Error('Inappropriate ioctl for device, cannot get');
const hungUp = new Error('Input/output error, cannot get');

describe('watching a port', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  const scene = (first: Error | null) => {
    let answer = first;
    let asked = 0;
    const gone = vi.fn();
    const port = {
      isOpen: true,
      get: (done: (error: Error | null) => void): void => {
        asked += 1;
        done(answer);
      },
    };
    const watch: HangUpWatch = watchHangUp(port, gone);
    const says = (next: Error | null): void => {
      answer = next;
    };
    return { watch, port, gone, says, asked: () => asked };
  };

  it.each([
    ['with control lines', null],
    ['without any', noLines],
  ])('should tell within a second that a port %s has hung up', (_, first) => {
    const { gone, says } = scene(first);
    vi.advanceTimersByTime(5000);
    expect(gone).not.toHaveBeenCalled();
    says(hungUp);
    vi.advanceTimersByTime(1000);
    expect(gone).toHaveBeenCalled();
  });

  it('should not ask while bytes come', () => {
    const { watch, asked } = scene(null);
    const before = asked();
    for (let ms = 0; ms < 5000; ms += 100) {
      watch.heard();
      vi.advanceTimersByTime(100);
    }
    expect(asked()).toBe(before);
  });

  it('should say nothing once it is stopped, nor of a port that is closed', () => {
    const stopped = scene(null);
    stopped.watch.stop();
    stopped.says(hungUp);
    const closed = scene(null);
    closed.port.isOpen = false;
    closed.says(hungUp);
    vi.advanceTimersByTime(5000);
    expect(stopped.gone).not.toHaveBeenCalled();
    expect(closed.gone).not.toHaveBeenCalled();
  });
});
