/**
 * How eagerly the runtime turns code into machine code. A run that compiles one household is over before most of that work pays: waiting
 * longer with it takes a fifth to a third off a run's processor time.
 */
import { setFlagsFromString } from 'node:v8';

/** The runtime whose switch is known; later ones weigh this by themselves, and refuse the switch aloud. */
const MAJOR = 'v20.';
const PATIENT_BYTES = 1_000_000;
const USUAL_BYTES = 67_584;

/** Suits a process that runs once, for a second or two. */
export function expectShortRun(): void {
  if (process.version.startsWith(MAJOR)) setFlagsFromString(`--interrupt-budget=${PATIENT_BYTES}`);
}

/** Back to what suits a process that goes on: a server, many households. */
export function expectLongRun(): void {
  if (process.version.startsWith(MAJOR)) setFlagsFromString(`--interrupt-budget=${USUAL_BYTES}`);
}
