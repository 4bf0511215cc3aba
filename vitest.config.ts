import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Many tests wait for programs they have started; one of them at a time would leave half the machine idle.
    maxWorkers: '100%',
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // Pages are waited for by what they show, on a busy machine too.
    expect: { poll: { timeout: 30_000 } },
  },
});
