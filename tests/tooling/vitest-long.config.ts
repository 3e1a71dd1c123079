// Stories that take minutes of real time: `npm run test:long`.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    setupFiles: ['tests/support/setup.ts'],
    include: ['tests/long/**/*.test.ts'],
    // Whoever runs the tests may have settings of their own.
    env: { XDG_CONFIG_HOME: '/nonexistent' },
  },
});
