/** Compiles in memory what a mutation made, and holds the outcome against what is promised for any text. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Disk, loadText } from '../../src/cli/files.ts';
import { type Compiled, compile } from '../../src/compile.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { emitAll } from '../../src/emit/emitters.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Ending } from './campaign.ts';

const ROOT = join(import.meta.dirname, '../..').replace(/\/dist$/, '');

export function shipped(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

export const PROFILES: ReadonlyMap<string, string> = new Map(
  readdirSync(join(ROOT, 'profiles')).map((name) => [name.replace(/\.yaml$/, ''), shipped(`profiles/${name}`)]),
);

export const PROFILE_IDS: readonly string[] = [...PROFILES.keys()].sort();

/** Returns the text that a file of these bytes has, or null where it is none. */
export function textOf(bytes: Uint8Array): string | null {
  const disk = { readFileSync: () => Buffer.from(bytes) } as unknown as Disk;
  const loaded = loadText('file', disk);
  return loaded.ok ? loaded.text : null;
}

export interface Asked {
  readonly text: string;
  /** Profiles of the household's own, by path. */
  readonly own?: ReadonlyMap<string, string>;
  readonly earlier?: Plan | null;
  readonly today: string;
  readonly pdf?: boolean;
}

/** Returns how it ended; throws where a promise is broken. */
export async function compiledWell({ text, own, earlier = null, today, pdf = false }: Asked): Promise<Ending> {
  const compiled = compile({
    file: 'fuzz.yaml',
    text,
    profile: (idOrPath) => {
      const found = own?.get(idOrPath) ?? PROFILES.get(idOrPath);
      return found === undefined
        ? null
        : { file: own?.has(idOrPath) ? idOrPath : `profiles/${idOrPath}.yaml`, text: found };
    },
    profileIds: PROFILE_IDS,
    earlier,
    today: { date: today },
    version: 'fuzz',
  });
  wellSaid(compiled, text);
  if (!compiled.plan) return 'refused';
  const products = await emitAll(compiled.plan, { pdf });
  for (const { path, content } of products)
    if (typeof content === 'string' && path !== 'plan.json' && /\bundefined\b|\[object |\bNaN\b/.test(content))
      throw new Error(`${path} holds ${/.{0,60}(?:undefined|\[object |NaN).{0,40}/.exec(content)?.[0]}`);
  return earlier && compiled.plan === earlier ? 'as before' : 'planned';
}

/** Every refusal has a reason, every reason its words and, where it has a place, a place in the text. */
function wellSaid({ plan, diagnostics }: Compiled, text: string): void {
  if (!plan && !diagnostics.some(({ weight }) => weight === 'error')) throw new Error('refused without a reason');
  const lines = text.split('\n').length;
  for (const { code, because, instead, place } of diagnostics) {
    const words = `${because} ${instead}`;
    if (because === '' || /\bundefined\b|\[object |\bNaN\b|\n {4}at /.test(words))
      throw new Error(`${code} says: ${words}`);
    if (place?.file === 'fuzz.yaml' && (place.line < 1 || place.line > lines || place.column < 1))
      throw new Error(`${code} points to ${place.line}:${place.column} of ${lines} lines`);
  }
  renderText(diagnostics, new Map([['fuzz.yaml', { shown: 'fuzz.yaml', text }]]), { columns: 80 });
}
