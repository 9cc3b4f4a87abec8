// Bundles each benchmark and runs it in a process of its own, one after the other. `npm run bench -- NAME …` runs those whose names begin
// with one of the NAMEs and prints all of it; `--readme` runs those with figures that were promised and writes two tables into the README.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';

const here = import.meta.dirname;
const root = join(here, '../..');
const into = join(root, 'dist/bench');
const isForReadme = process.argv.includes('--readme');
const wanted = process.argv.slice(2).filter((argument) => argument !== '--readme');
/** In the order of the README. */
const PROMISED = [
  'start-up',
  'dial',
  'shelf',
  'assignment',
  'pictures',
  'mist',
  'feeding',
  'chores',
  'feed',
  'serve',
  'paper',
  'many',
];

/** What a file of the tests finds from its own folder it finds from there in a bundle too. */
const ownFolders = {
  name: 'own folders',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]tests[\\/].*\.ts$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8').replaceAll('import.meta.dirname', JSON.stringify(dirname(path))),
      loader: 'ts',
    }));
  },
};

/** So long a general solver may take for each shelf: all of it is to fit into some five minutes. */
if (isForReadme) process.env.ASSIGNMENT_SECONDS ??= '8';

if (isForReadme && wanted.length > 0) {
  console.error('--readme takes no names: what stands side by side is measured in one run');
  process.exit(2);
}
const all = readdirSync(here)
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace('.bench.ts', ''))
  .sort();
const chosen = wanted.length === 0 ? all : all.filter((name) => wanted.some((part) => name.startsWith(part)));

mkdirSync(into, { recursive: true });
const machine = `${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`;
console.log(`${machine}\n`);
const begun = performance.now();
const tables = [];
for (const name of isForReadme ? PROMISED : chosen) tables.push(...(await tablesOf(name)));
console.log(`${((performance.now() - begun) / 1000).toFixed(0)} s in all`);
if (isForReadme && process.exitCode === undefined) writeReadme();

/** Runs one benchmark and prints its tables; none where it fails. */
async function tablesOf(name) {
  const outfile = join(into, `${name}.bench.mjs`);
  const answer = join(into, `${name}.json`);
  rmSync(answer, { force: true });
  await build({
    stdin: {
      contents: `import { writeFileSync } from 'node:fs';
import { run } from ${JSON.stringify(join(here, `${name}.bench.ts`))};
writeFileSync(${JSON.stringify(answer)}, JSON.stringify(await run()));`,
      resolveDir: here,
      loader: 'ts',
    },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    define: { __VERSION__: '"bench"' },
    plugins: [ownFolders],
    outfile,
    logLevel: 'warning',
  });
  const { status } = spawnSync(process.execPath, ['--expose-gc', outfile], { stdio: 'inherit', cwd: root });
  if (status !== 0) {
    process.exitCode = 1;
    return [];
  }
  const found = JSON.parse(readFileSync(answer, 'utf8'));
  for (const table of found) print(table);
  return found;
}

function print({ name, rows, targets = [], beside = [] }) {
  console.log(`## ${name}`);
  for (const [label, value, unit] of rows) console.log(`  ${label.padEnd(64)}${String(value).padStart(12)} ${unit}`);
  for (const each of targets) console.log(`  ${metOf(each).padEnd(9)}${each.what}: ${each.measured} (${each.target})`);
  for (const { work, ours, other, takes, ratio } of beside)
    console.log(`  beside   ${work}: ${ours} here; ${other} ${takes}, ${ratio}`);
  console.log('');
}

function metOf({ isMet }) {
  return isMet === null ? 'told' : isMet ? 'met' : 'NOT MET';
}

function shareOf({ share }) {
  return share === null ? '' : share < 10 ? share.toFixed(2) : share.toFixed(0);
}

function rowOf(...cells) {
  return `| ${cells.map((cell) => String(cell).replaceAll('|', '\\|')).join(' | ')} |`;
}

function writeReadme() {
  const targets = tables.flatMap((table) => table.targets ?? []);
  const beside = tables.flatMap((table) => table.beside ?? []);
  const lines = [
    `Measured on ${machine}.`,
    '',
    rowOf('what', 'measured', 'target', 'of the target', 'met'),
    rowOf('---', '---', '---', '--:', '---'),
    ...targets.map((each) =>
      rowOf(
        each.what,
        each.measured,
        each.target,
        shareOf(each),
        { met: 'yes', told: '', 'NOT MET': '**no**' }[metOf(each)],
      ),
    ),
    '',
    'The same work in the same run, by what one would take instead:',
    '',
    rowOf('work', 'here', 'instead', 'takes', 'ratio'),
    rowOf('---', '---', '---', '---', '---'),
    ...beside.map(({ work, ours, other, takes, ratio }) => rowOf(work, ours, other, takes, ratio)),
  ];
  const path = join(root, 'README.md');
  const block = `<!-- bench -->\n${lines.join('\n')}\n<!-- /bench -->`;
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace(/<!-- bench -->[\s\S]*<!-- \/bench -->/, () => block),
  );
}
