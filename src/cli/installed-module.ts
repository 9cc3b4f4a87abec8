/**
 * Modules that stay outside of the bundle and are imported when they are wanted, the runtime's own among them. Code that was taken over from an earlier run cannot import anything by
 * itself: whoever started it lends it the means.
 */

export type ImportModule = (name: string) => Promise<unknown>;

let importModule: ImportModule = (name) => import(name);

/** Has modules imported in another way from now on. */
export function importBy(means: ImportModule): void {
  importModule = means;
}

/** Imports an installed module by its name. */
export function installedModule(name: string): Promise<unknown> {
  return importModule(name);
}
