/** What every command takes, and what is said where a command line cannot be taken. */

/** Options that every command takes. */
export interface CommonOptions {
  readonly today?: string;
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly debug?: boolean;
}

/** Wrong usage: what was said on the command line cannot be taken. */
export class UsageError extends Error {}
