import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    pool: 'forks',
    // By default one core is left free; here nobody waits for it.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'rules',
          include: ['tests/{core,published}/**/*.test.{ts,tsx}'],
          // core is pure and keeps nothing between calls, so its files need no process each: less than half the time.
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: 'app', include: ['tests/{electron,renderer}/**/*.test.{ts,tsx}'] },
      },
    ],
  },
});
