import { defineConfig } from 'vitest/config';

const root = new URL('../..', import.meta.url).pathname;

/** serialport's native part ends the process when it runs in a worker thread: its tests get processes. */
const onPorts = ['tests/link/**/*.test.ts'];
/** Milliseconds count on a hostile wire: its tests run when all others are done. */
const onTime = ['tests/hostile/link/**/*.test.ts'];
/** Minutes of real time each: `npm run test:long`. */
const long = ['tests/long/**'];

export default defineConfig({
  root,
  test: {
    setupFiles: ['tests/support/setup.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Whoever runs the tests may have settings of their own.
    env: { XDG_CONFIG_HOME: '/nonexistent' },
    projects: [
      {
        extends: true,
        test: {
          name: 'pure',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [...onPorts, ...onTime, ...long],
          pool: 'threads',
        },
      },
      { extends: true, test: { name: 'ports', include: onPorts, pool: 'forks' } },
      {
        extends: true,
        test: { name: 'on time', include: onTime, pool: 'threads', sequence: { groupOrder: 1 } },
      },
    ],
  },
});
