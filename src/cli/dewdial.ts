#!/usr/bin/env node
import { fileURLToPath } from 'node:url';
import { loadProgram } from './load-program.ts';
import { expectShortRun } from './short-run.ts';

expectShortRun();
const { main } = loadProgram(fileURLToPath(new URL('./program.cjs', import.meta.url)));
await main(process.argv.slice(2), (name) => import(name));
