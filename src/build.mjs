// Bundles into dist/: the program in one file, what it uses as a library and in its workers split, and the code that the runtime makes of it.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { appendFileSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
const root = fileURLToPath(new URL('..', import.meta.url));
const shared = {
  absWorkingDir: root,
  outdir: 'dist',
  bundle: true,
  minify: true,
  platform: 'node',
  target: 'node20',
  external: ['pdfkit', 'fontkit', 'dejavu-fonts-ttf', 'tinypool'],
  logLevel: 'warning',
};

/** `commander` could start other programs and never does here: what that takes is loaded when it is asked for. */
const lateChildProcess = {
  name: 'late-child-process',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
      /[\\/]commander[\\/]/.test(importer) ? { path: 'child_process', namespace: 'late' } : undefined,
    );
    onLoad({ filter: /^child_process$/, namespace: 'late' }, () => ({
      contents: "Object.defineProperty(exports,'spawn',{get:()=>require('node:child_process').spawn})",
    }));
  },
};

rmSync(new URL('../dist', import.meta.url), { recursive: true, force: true });
await Promise.all([
  build({
    ...shared,
    entryPoints: {
      dewdial: 'src/cli/dewdial.ts',
      'keep-code': 'src/cli/keep-code.ts',
      index: 'src/index.ts',
      'compile-worker': 'src/cli/compile-worker.ts',
    },
    splitting: true,
    format: 'esm',
    chunkNames: 'parts/[name]-[hash]',
    define: { __VERSION__: JSON.stringify(version) },
    banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
  }),
  build({
    ...shared,
    entryPoints: { program: 'src/cli/main.ts' },
    outExtension: { '.js': '.cjs' },
    format: 'cjs',
    plugins: [lateChildProcess],
    define: { __VERSION__: JSON.stringify(version), 'import.meta.url': '__moduleUrl' },
    banner: { js: "const __moduleUrl=require('node:url').pathToFileURL(__filename).href;" },
  }),
]);
// The code that is kept of the program is known by it.
const program = new URL('../dist/program.cjs', import.meta.url);
appendFileSync(program, `//${createHash('sha256').update(readFileSync(program)).digest('hex')}`);
// Without the code that is kept here the program runs all the same, only slower.
spawnSync(process.execPath, ['dist/keep-code.js'], { cwd: root, stdio: 'ignore' });
rmSync(new URL('../dist/keep-code.js', import.meta.url));
