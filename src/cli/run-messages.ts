/** What a run has to tell: its messages on standard error, and its exit code. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { renderText, type SourceTexts } from '../diagnostics/render.ts';
import { EXIT, type World } from './world.ts';

/** A run as far as its messages go. */
export interface Told {
  readonly compiled: { readonly diagnostics: readonly Diagnostic[] };
  readonly sources: SourceTexts;
}

/** Says every message on standard error. */
export function sayDiagnostics(run: Told, world: World, wanted: (d: Diagnostic) => boolean = () => true): void {
  const shown = run.compiled.diagnostics.filter(wanted);
  if (shown.length > 0)
    world.say(renderText(shown, run.sources, { colour: usesColour(world), columns: world.columns }));
}

/** Tells whether messages go to a terminal that is to have colour. */
export function usesColour(world: World): boolean {
  return world.isSayTerminal && !world.env.NO_COLOR;
}

/** Returns the exit code that the messages ask for. */
export function exitCodeOf(diagnostics: readonly Diagnostic[], strict: boolean): number {
  if (diagnostics.some(({ weight }) => weight === 'error' || weight === 'refusal')) return EXIT.unusable;
  return strict && diagnostics.some(({ weight }) => weight === 'warning') ? EXIT.strictWarnings : EXIT.done;
}
