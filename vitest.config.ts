import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Pages are waited for by what they show, on a busy machine too.
    expect: { poll: { timeout: 30_000 } },
  },
});
