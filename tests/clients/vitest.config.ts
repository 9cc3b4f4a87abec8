import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    dir: new URL('.', import.meta.url).pathname,
    include: ['**/*.test.ts'],
    exclude: ['node_modules/**'],
    fileParallelism: false,
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
  },
});
