// The clock every live reading is stamped with: seconds since it was made, never set back. Tells no wall time.
import type { Clock } from '../session/ports.js';

export const createMonotonicClock = (): Clock => {
  const start = performance.now();
  return {
    now: () => (performance.now() - start) / 1000,
    after: (seconds, call) => {
      const timer = setTimeout(call, seconds * 1000);
      return () => clearTimeout(timer);
    },
  };
};
