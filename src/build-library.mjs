// What the packed package holds besides the program: types, JSON Schemas, and the licences of what is bundled. Run after build.mjs.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const { householdSchema, profileSchema } = await import('../dist/index.js');

mkdirSync(join(root, 'dist/schemas'), { recursive: true });
for (const [name, schema] of [
  ['household', householdSchema],
  ['profile', profileSchema],
])
  writeFileSync(join(root, `dist/schemas/${name}.json`), `${JSON.stringify(schema(), null, 2)}\n`);

const compiler = join(root, 'node_modules/typescript/bin/tsc');
const { status } = spawnSync(process.execPath, [compiler, '-p', join(root, '.tsconfig.types.json')], {
  stdio: 'inherit',
});
if (status !== 0) process.exit(status ?? 1);

writeFileSync(join(root, 'dist/third-party-licences.txt'), licences());

/** Every package that may be part of the bundle or is installed with it, with its licence in full. */
function licences() {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(([path, { dev, optional }]) => path !== '' && !dev && !optional)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([path, { version, license }]) => {
      const title = `${path.slice(path.lastIndexOf('node_modules/') + 13)} ${version}: ${license}`;
      return `${title}\n${'='.repeat(title.length)}\n\n${licenceText(join(root, path))}\n`;
    })
    .join('\n');
}

function licenceText(folder) {
  const names = existsSync(folder)
    ? readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name))
    : [];
  const texts = names.sort().map((name) => readFileSync(join(folder, name), 'utf8').trim());
  return texts.length > 0 ? texts.join('\n\n') : 'The package holds no text of it.';
}
