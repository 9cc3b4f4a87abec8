import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const SRC = join(ROOT, 'src');

interface ImportLine {
  readonly from: string;
  readonly to: string;
}

/** The folder table of DEVELOPERS.md: order is the direction of imports, the last column the packages that live there. */
function folderTable(markdown: string): {
  readonly order: readonly string[];
  readonly homes: ReadonlyMap<string, string>;
} {
  const rows = [...markdown.matchAll(/^\| `([a-z]+)\/` \| ([^|]*) \| ([^|]*) \|$/gm)];
  const homes = new Map<string, string>();
  for (const row of rows) {
    for (const name of row[3]?.matchAll(/`([^`]+)`/g) ?? []) homes.set(name[1] ?? '', row[1] ?? '');
  }
  return { order: rows.map((row) => row[1] ?? ''), homes };
}

function importsOf(file: string, text: string): readonly ImportLine[] {
  const pattern =
    /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s+'([^']+)'|(?:^|\n)\s*import\s+'([^']+)'|import\('([^']+)'\)/g;
  return [...text.matchAll(pattern)].map((match) => ({ from: file, to: match[1] ?? match[2] ?? match[3] ?? '' }));
}

function folderOf(file: string): string | null {
  const path = relative(SRC, file).split('/');
  return path.length > 1 ? (path[0] ?? null) : null;
}

function violations(lines: readonly ImportLine[], markdown: string): readonly string[] {
  const { order, homes } = folderTable(markdown);
  const found: string[] = [];
  for (const { from, to } of lines) {
    const here = folderOf(from);
    if (here === null) continue;
    if (!order.includes(here)) found.push(`${here}/ is not in the folder table`);
    if (to.startsWith('.')) {
      const there = folderOf(resolve(dirname(from), to));
      if (there === null && !OUTSIDE.has(here))
        found.push(`${relative(SRC, from)} imports ${to} from above the folders`);
      else if (there === null) continue;
      else if (order.indexOf(there) > order.indexOf(here))
        found.push(`${relative(SRC, from)} imports upwards from ${there}/`);
      else if (here === 'emit' && there === 'emit' && !isSameEmitter(from, resolve(dirname(from), to)))
        found.push(`${relative(SRC, from)} imports another emitter`);
      else if (
        (here === 'layout' || here === 'emit') &&
        !DRAWERS_KNOW.includes(there) &&
        there !== here &&
        !(here === 'emit' && there === 'layout')
      ) {
        found.push(`${relative(SRC, from)} knows more than the plan: ${there}/`);
      }
    } else if (to.startsWith('node:')) {
      if (!OUTSIDE.has(here) && !PURE_NODE.has(to)) found.push(`${relative(SRC, from)} reaches outside: ${to}`);
    } else {
      const name = to.startsWith('@') ? to.split('/').slice(0, 2).join('/') : (to.split('/')[0] ?? to);
      if (homes.get(name) !== here)
        found.push(`${relative(SRC, from)} imports ${name}, whose home is ${homes.get(name) ?? 'nowhere'}`);
    }
  }
  return found;
}

const DRAWERS_KNOW = ['basics', 'diagnostics', 'science', 'plan', 'hardware'];
const OUTSIDE = new Set(['cli', 'serve']);
/** Parts of Node that compute and reach nothing but, late, a package. */
const PURE_NODE = new Set(['node:crypto', 'node:zlib', 'node:buffer', 'node:module']);

/** Emitters never import each other; `emitters.ts` is the table and `words` are shared. */
function isSameEmitter(from: string, to: string): boolean {
  const [a, b] = [relative(join(SRC, 'emit'), from).split('/'), relative(join(SRC, 'emit'), to).split('/')];
  return a.length === 1 || b.length === 1 || a[0] === b[0];
}

function sourceFiles(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
}

const markdown = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
const files = sourceFiles(SRC);
const lines = files.flatMap((file) => importsOf(file, readFileSync(file, 'utf8')));

describe('imports', () => {
  it('reads every folder of src in the table and every import of a file', () => {
    const folders = readdirSync(SRC, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(folderTable(markdown).order.slice().sort()).toEqual(folders.sort());
    expect(lines.length).toBeGreaterThan(files.length);
  });

  it('run one way, packages in their one home', () => {
    expect(violations(lines, markdown)).toEqual([]);
  });

  it.each([
    ['upwards', 'basics/planted.ts', '../solve/solve.ts'],
    ['between emitters', 'emit/ics/planted.ts', '../json/plan-json.ts'],
    ['of what a drawing must not know', 'layout/planted.ts', '../resolve/care.ts'],
    ['of the disk', 'solve/planted.ts', 'node:fs'],
    ['of a package outside its home', 'solve/planted.ts', 'yaml'],
  ])('are refused %s', (_what, from, to) => {
    const text = `import { planted } from '${to}';\n`;
    expect(violations(importsOf(join(SRC, from), text), markdown)).toHaveLength(1);
  });

  it('hold no package in two files of different modules', () => {
    const homes = new Map<string, Set<string>>();
    for (const { from, to } of lines) {
      if (to.startsWith('.') || to.startsWith('node:')) continue;
      const name = to.startsWith('@') ? to.split('/').slice(0, 2).join('/') : (to.split('/')[0] ?? to);
      homes.set(name, (homes.get(name) ?? new Set()).add(folderOf(from) ?? from));
    }
    expect([...homes].filter(([, folders]) => folders.size > 1)).toEqual([]);
  });
});
