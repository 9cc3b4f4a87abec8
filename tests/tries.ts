/** How much is tried: `npm test` takes a share that has been seen to fail where something is broken, `npm run test:all` everything. */

export const TRIES_ALL = process.env.TESTS_ALL === '1';

/** Returns how many cases to try. */
export function tries(share: number, all: number): number {
  return TRIES_ALL ? all : share;
}
