import { defineConfig } from 'vitest/config';
import { TRIES_ALL } from './tries.ts';

const LONGEST_MS = TRIES_ALL ? 1_800_000 : 60_000;

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['**/*.test.ts'],
    exclude: ['**/clients/**', '**/bench/**', '**/node_modules/**'],
    // One process runs many files and keeps the sources that it has read: a file of tests leaves nothing behind for the next.
    isolate: false,
    testTimeout: LONGEST_MS,
    hookTimeout: LONGEST_MS,
  },
});
