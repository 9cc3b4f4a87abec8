// Bundles the program into dist/, split so that each command and each writer is loaded only when asked for.
import { readFileSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));

rmSync(new URL('../dist', import.meta.url), { recursive: true, force: true });
await build({
  entryPoints: {
    dewdial: 'src/cli/dewdial.ts',
    index: 'src/index.ts',
    'compile-worker': 'src/cli/compile-worker.ts',
  },
  absWorkingDir: new URL('..', import.meta.url).pathname,
  outdir: 'dist',
  bundle: true,
  splitting: true,
  minify: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'parts/[name]-[hash]',
  define: { __VERSION__: JSON.stringify(version) },
  external: ['pdfkit', 'fontkit', 'dejavu-fonts-ttf', 'tinypool'],
  banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
  logLevel: 'warning',
});
