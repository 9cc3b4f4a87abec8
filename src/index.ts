/** The program as a library: texts in, a plan and its products out. Nothing here touches disk, clock or network. */
export { type Compiled, type CompileInput, compile } from './compile.ts';
export type { Diagnostic, Kind, Place, Weight } from './diagnostics/diagnostic.ts';
export { renderJson, renderText } from './diagnostics/render.ts';
export { emitAll } from './emit/emitters.ts';
export type { EmitOptions, Product } from './emit/product.ts';
export type * from './plan/plan.ts';
export { readPlan } from './plan/read-plan.ts';
export { householdSchema, profileSchema } from './read/json-schema.ts';
