import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/{core,published,electron,renderer}/**/*.test.{ts,tsx}'],
    testTimeout: 60_000,
    pool: 'forks',
    // By default one core is left free; here nobody waits for it.
    maxWorkers: '100%',
  },
});
