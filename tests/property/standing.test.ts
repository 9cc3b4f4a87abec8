/**
 * `check` and `today` of generated households and chains of edits: the same words, JSON and exit code whether what was kept of the plan that
 * stands is there or not. `STANDING_HOUSEHOLDS` sets how many, each then asked more often; `STANDING_FIRST` the first seed.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import { run as check } from '../../src/cli/check-command.ts';
import { run as compile } from '../../src/cli/compile-command.ts';
import { realDisk } from '../../src/cli/files.ts';
import { standingRun } from '../../src/cli/standing-plan.ts';
import { run as today } from '../../src/cli/today-command.ts';
import { UsageError } from '../../src/cli/usage.ts';
import { realWorld, type World } from '../../src/cli/world.ts';
import { editedHousehold } from '../generated/household-edits.ts';
import { drawnHousehold } from './feeding-households.ts';
import { Draw, generateHousehold } from './household-generator.ts';

const ASKED = process.env.STANDING_HOUSEHOLDS;
const HOUSEHOLDS = Number(ASKED ?? 2);
const FIRST = Number(process.env.STANDING_FIRST ?? 0);
const EDITS = ASKED === undefined ? 1 : 2;
const VERSION = 'test';

const folder = mkdtempSync(join(tmpdir(), 'dewdial-standing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ended {
  readonly exit: number | string;
  readonly out: string;
  readonly said: string;
}

/** Noon UTC of a day. */
const noonOf = (day: string): number => epochDay(day) * 86_400_000 + 43_200_000;

/** Runs a command as the command line would, at noon UTC of a day where the clock is asked. */
async function ended(day: string, command: (world: World) => Promise<number>): Promise<Ended> {
  const [out, said]: [string[], string[]] = [[], []];
  const world: World = {
    ...realWorld(),
    disk: realDisk,
    out: (text) => void out.push(text),
    say: (text) => void said.push(text),
    nowMs: () => noonOf(day),
    isOutTerminal: false,
    isSayTerminal: false,
    cwd: folder,
  };
  const exit = await command(world).catch((error) => {
    if (error instanceof UsageError) return error.message;
    throw error;
  });
  return { exit, out: out.join(''), said: said.join('') };
}

/** Every way of asking on a day, of which some are wrong. */
async function answers(file: string, out: string, day: string): Promise<readonly Ended[]> {
  const far = isoDateOf(epochDay(day) + 400);
  const all: readonly ((world: World) => Promise<number>)[] = [
    (world) => check([file], { out }, world, VERSION),
    (world) => check([file], { out, strict: true }, world, VERSION),
    (world) => check([file], { out, json: true, today: day }, world, VERSION),
    (world) => check([file], { out, today: far }, world, VERSION),
    (world) => check([file], { out, today: 'soon' }, world, VERSION),
    (world) => today([file], { out, days: '1' }, world, VERSION),
    (world) => today([file], { out, days: '9', today: day, strict: true }, world, VERSION),
    (world) => today([file], { out, days: '31', on: far }, world, VERSION),
    (world) => today([file], { out, days: '3', json: true, on: isoDateOf(epochDay(day) + 20) }, world, VERSION),
    (world) => today([file], { out, days: '2', for: 'keeper' }, world, VERSION),
    (world) => today([file], { out, days: '2', for: 'sitter', json: true }, world, VERSION),
    (world) => today([file], { out, days: '2', for: 'nobody' }, world, VERSION),
  ];
  const found: Ended[] = [];
  for (const ask of all) found.push(await ended(day, ask));
  return found;
}

function householdOf(seed: number, draw: Draw): string {
  if (seed % 3 === 2) return drawnHousehold(seed).text;
  return generateHousehold(seed, { enclosures: draw.whole(1, 2), days: draw.whole(60, 150) });
}

const seeds = Array.from({ length: HOUSEHOLDS }, (_, index) => FIRST + index);

describe('what is kept of the plan that stands', () => {
  it.each(seeds)('says what a run says that compiles: household %i and its edits', async (seed) => {
    const draw = new Draw(seed + 41_000);
    const [file, out] = [join(folder, `home-${seed}.yaml`), join(folder, 'out')];
    let text = householdOf(seed, draw);
    let day = epochDay(/from: "?(\d{4}-\d\d-\d\d)/.exec(text)?.[1] ?? '2027-01-01') + draw.whole(-10, 5);
    let compared = 0;
    for (let edit = 0; edit <= EDITS; edit++) {
      if (edit > 0) {
        day += draw.whole(0, 25);
        text = editedHousehold(text, draw, day).text;
      }
      writeFileSync(file, text);
      const made = isoDateOf(day);
      const { exit } = await ended(made, (world) => compile([file], { out, pdf: false }, world, VERSION));
      if (exit !== 0 && exit !== 1) throw new Error(`compile ended with ${exit}`);
      const asked = isoDateOf(day + draw.one([0, draw.whole(1, 60), -draw.whole(1, 5)]));
      const stands = standingRun(file, out, { nowMs: noonOf(made) }, realWorld(), VERSION) !== null;
      const kept = await answers(file, out, asked);
      rmSync(join(out, '.versions/.kept'), { recursive: true });
      expect(kept, `edit ${edit}, asked on ${asked}`).toEqual(await answers(file, out, asked));
      compared += stands ? kept.length : 0;
    }
    console.info(`household ${seed}: ${compared} answers compared`);
    expect(compared).toBeGreaterThan(0);
  });
});
