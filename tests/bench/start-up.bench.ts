import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { atMost, shown, type Table, type Target } from './figures.ts';

interface Command {
  readonly label: string;
  readonly args: (out: string) => readonly string[];
  /** Whether the folder of results is emptied before each run. */
  readonly isFresh: boolean;
}

const ROUNDS = 7;
const SMALL = 'examples/one-gecko.yaml';
const SHELF = 'examples/reading-room.yaml';
/** The same two with their lights alone: an own profile that states hours of light, no feeds, every chore switched off. */
const SMALL_LIGHT = 'tests/bench/light-alone/one-gecko.yaml';
const SHELF_LIGHT = 'tests/bench/light-alone/shelf.yaml';

const on =
  (command: string, file: string, ...more: readonly string[]) =>
  (out: string) => ['dist/dewdial.js', command, file, ...more, '--out', out, '--today', '2027-01-01'];

const COMMANDS: readonly Command[] = [
  { label: 'node -e 0 (the floor)', args: () => ['-e', '0'], isFresh: false },
  { label: 'dewdial --version', args: () => ['dist/dewdial.js', '--version'], isFresh: false },
  { label: 'one enclosure, light alone: check', args: on('check', SMALL_LIGHT), isFresh: true },
  { label: 'one enclosure, light alone: compile', args: on('compile', SMALL_LIGHT, '--no-pdf'), isFresh: true },
  { label: 'three enclosures, light alone: check', args: on('check', SHELF_LIGHT), isFresh: true },
  { label: 'three enclosures, light alone: compile', args: on('compile', SHELF_LIGHT, '--no-pdf'), isFresh: true },
  { label: 'the same, the plan standing: check', args: on('check', SHELF_LIGHT), isFresh: false },
  { label: 'the same, the plan standing: today', args: on('today', SHELF_LIGHT), isFresh: false },
  { label: 'one enclosure: check', args: on('check', SMALL), isFresh: true },
  { label: 'one enclosure: compile without PDF', args: on('compile', SMALL, '--no-pdf'), isFresh: true },
  { label: 'one enclosure: check, its plan standing', args: on('check', SMALL), isFresh: false },
  { label: 'one enclosure: today, its plan standing', args: on('today', SMALL), isFresh: false },
  { label: 'three enclosures: check', args: on('check', SHELF), isFresh: true },
  { label: 'three enclosures: compile without PDF', args: on('compile', SHELF, '--no-pdf'), isFresh: true },
  { label: 'three enclosures: compile with PDF', args: on('compile', SHELF), isFresh: true },
  { label: 'three enclosures: today, their plan standing', args: on('today', SHELF), isFresh: false },
];

/** Whole processes, the least of several runs each, taken in turn so that all meet the same machine; ratios to `node -e 0`. */
export async function run(): Promise<readonly Table[]> {
  const standing = mkdtempSync(join(tmpdir(), 'dewdial-bench-'));
  const fresh = mkdtempSync(join(tmpdir(), 'dewdial-bench-'));
  for (const file of [SMALL, SHELF, SHELF_LIGHT])
    spawnSync(process.execPath, on('compile', file)(standing), { stdio: 'ignore' });
  const least = COMMANDS.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, row] of COMMANDS.entries()) {
      if (row.isFresh) rmSync(fresh, { recursive: true, force: true });
      const start = performance.now();
      const { status } = spawnSync(process.execPath, row.args(row.isFresh ? fresh : standing), { stdio: 'ignore' });
      least[i] = Math.min(least[i] ?? Number.POSITIVE_INFINITY, performance.now() - start);
      if (status !== 0) throw new Error(`${row.label} ended with ${status}`);
    }
  }
  for (const folder of [standing, fresh]) rmSync(folder, { recursive: true, force: true });
  const floor = least[0] ?? 1;
  const floors = (label: string) => (least[COMMANDS.findIndex((each) => each.label === label)] ?? 0) / floor;
  return [
    {
      name: `Whole commands, each a process of its own (wall clock, least of ${ROUNDS})`,
      rows: COMMANDS.map(({ label }, i) => [
        label,
        (least[i] ?? 0).toFixed(0),
        `ms   ${((least[i] ?? 0) / floor).toFixed(1)} x floor`,
      ]),
      targets: [
        ...PROMISES.map(([label, most]) => inFloors(label, floors(label), most, floor)),
        inFloors(
          'what PDF adds to it',
          floors('three enclosures: compile with PDF') - floors('three enclosures: compile without PDF'),
          6,
          floor,
        ),
      ],
    },
  ];
}

/** In empty processes. Check, today and the first compile were promised for light alone. */
const PROMISES: readonly (readonly [label: string, most: number])[] = [
  ['three enclosures, light alone: check', 3],
  ['three enclosures, light alone: compile', 5],
  ['the same, the plan standing: check', 3],
  ['the same, the plan standing: today', 3],
  ['one enclosure: check, its plan standing', 3],
  ['one enclosure: today, its plan standing', 3],
  ['three enclosures: today, their plan standing', 3],
  ['three enclosures: compile without PDF', 20],
];

function inFloors(what: string, measured: number, most: number, floorMs: number): Target {
  return atMost(what, measured, most, 'times `node -e 0`', ` (${shown(measured * floorMs)} ms)`);
}
