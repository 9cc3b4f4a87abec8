import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { atMost, type Row, shown, type Table, type Target } from './figures.ts';
import { MIST_PROBLEMS_A_PLAN, manyHouseholds, oneLargeHousehold } from './many-households.ts';

const SEED = 1;
/** Smaller where the whole thing is only to be seen working. */
const ENCLOSURES = Number(process.env.MANY_ENCLOSURES ?? 1000);
const MIST_PROBLEMS = 120;
const LARGE = { enclosures: Math.round(ENCLOSURES * 0.3), dials: Math.max(1, Math.round(ENCLOSURES * 0.04)) };

interface Measured {
  readonly seconds: number;
  readonly cpuSeconds: number;
  readonly memoryMb: number;
}

/** Runs a compile of everything but PDF on two workers as a process of its own; memory is what the whole process holds at most. */
function compile(args: readonly string[], out: string): Measured {
  const tell = `process.on('exit', () => { const u = process.resourceUsage(); require('node:fs').writeFileSync(${JSON.stringify(join(out, '../usage.json'))}, JSON.stringify(u)); });`;
  const watch = join(out, '../watch.cjs');
  writeFileSync(watch, tell);
  const begun = performance.now();
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--require', watch, 'dist/dewdial.js', 'compile', ...args, '--no-pdf', '--out', out, '--today', '2027-01-01'],
    { encoding: 'utf8', maxBuffer: 1e9 },
  );
  const seconds = (performance.now() - begun) / 1000;
  if (status !== 0 && status !== 1) throw new Error(`ended with ${status}: ${stderr.slice(-2000)}`);
  const usage = JSON.parse(readFileSync(join(out, '../usage.json'), 'utf8')) as {
    readonly userCPUTime: number;
    readonly systemCPUTime: number;
    readonly maxRSS: number;
  };
  return { seconds, cpuSeconds: (usage.userCPUTime + usage.systemCPUTime) / 1e6, memoryMb: usage.maxRSS / 1024 };
}

function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'dewdial-many-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function measured(enclosures: number, plans: number | null): { readonly first: Measured; readonly second: Measured } {
  return inFolder((folder) => {
    mkdirSync(join(folder, 'rooms'));
    for (const { file, text } of manyHouseholds(SEED, enclosures, plans))
      writeFileSync(join(folder, 'rooms', file), text);
    const args = [join(folder, 'rooms'), '--jobs', '2'];
    const first = compile(args, join(folder, 'out'));
    return { first, second: compile(args, join(folder, 'out')) };
  });
}

function large(): Measured {
  return inFolder((folder) => {
    writeFileSync(join(folder, 'large.yaml'), oneLargeHousehold(SEED, LARGE.enclosures, LARGE.dials));
    return compile([join(folder, 'large.yaml')], join(folder, 'out'));
  });
}

function row(label: string, { seconds, cpuSeconds, memoryMb }: Measured): Row {
  return [label, seconds.toFixed(1), `s  (${cpuSeconds.toFixed(0)} s of processor, ${memoryMb.toFixed(0)} MB)`];
}

/** Whole processes; the tenth tells whether time grows with the work. */
export async function run(): Promise<readonly Table[]> {
  const plans = MIST_PROBLEMS / MIST_PROBLEMS_A_PLAN;
  const alike = measured(ENCLOSURES, plans);
  const tenth = measured(ENCLOSURES / 10, null);
  const differing = measured(ENCLOSURES, null);
  const single = large();
  const growth = differing.first.cpuSeconds / tenth.first.cpuSeconds;
  const [few, all] = [
    `${shown(ENCLOSURES)} enclosures, at most ${MIST_PROBLEMS} mist problems`,
    `${shown(ENCLOSURES)} enclosures, all different`,
  ];
  const one = `one file, ${LARGE.enclosures} enclosures, ${LARGE.dials} dials`;
  return [
    {
      name: 'Many households, everything but PDF, two workers',
      rows: [
        row(few, alike.first),
        row('  again, nothing changed', alike.second),
        row(all, differing.first),
        row('  again, nothing changed', differing.second),
        row(`${ENCLOSURES / 10} enclosures, all different`, tenth.first),
        ['  ten times the work takes', growth.toFixed(1), 'times the processor time'],
        row(one, single),
      ],
      targets: [
        ...within(few, alike.first, 60),
        ...within(all, differing.first, 240),
        atMost('ten times the work', growth, 11, 'times the processor time'),
        atMost('again, nothing changed', Math.max(alike.second.seconds, differing.second.seconds), 2, 's'),
        atMost(`${one}: memory`, single.memoryMb, MEMORY_MB, 'MB', ` (${shown(single.seconds)} s)`),
      ],
    },
  ];
}

const MEMORY_MB = 600;

function within(what: string, { seconds, memoryMb }: Measured, most: number): readonly Target[] {
  return [atMost(what, seconds, most, 's'), atMost(`${what}: memory`, memoryMb, MEMORY_MB, 'MB')];
}
