import { defineConfig } from 'vitest/config';

const root = new URL('../..', import.meta.url).pathname;

export default defineConfig({
  root,
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    setupFiles: ['tests/support/setup.ts'],
    testTimeout: 20_000,
    pool: 'threads',
    maxWorkers: 2,
  },
});
