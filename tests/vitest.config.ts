import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['**/*.test.ts'],
    exclude: ['**/clients/**', '**/bench/**', '**/node_modules/**'],
    // One process runs many files and keeps the sources that it has read: a file of tests leaves nothing behind for the next.
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
