/** Lamps on `auto` on shelves from small to large, and the least worst error of the same shelves as mixed-integer programs in HiGHS. */
import { Log } from '../../src/diagnostics/log.ts';
import type { Care } from '../../src/resolve/care.ts';
import { placeAutoLamps } from '../../src/solve/light/auto-lamps.ts';
import { historyOf } from '../../src/solve/light/dial-history.ts';
import { agreeingGroups } from '../../src/solve/light/group-checks.ts';
import { shelfLamps } from '../../src/solve/light/shelf-lamp.ts';
import { solveLighting } from '../../src/solve/lighting.ts';
import { alikeShelf, type ShelfSize } from '../generated/alike-shelf.ts';
import { type AlikeShelf, leastWorstOfShelf, leastWorstOverWeeks } from '../reference/assignment/shelf-program.ts';
import { type Beside, type Row, shown, type Table, times } from './figures.ts';

const SECONDS = Number(process.env.ASSIGNMENT_SECONDS ?? 20);
const STEP_MINUTES = 15;
/** 2 January 2027 is a Saturday. */
const FIRST_SATURDAY = 1;

const ONE_SETTING: readonly ShelfSize[] = (
  [
    [8, 3, 8, 3],
    [16, 5, 16, 4],
    [30, 6, 10, 6],
    [120, 16, 60, 9],
    [300, 40, 300, 9],
  ] as const
).map(([enclosures, dials, kinds, outlets]) => ({
  ...{ enclosures, dials, kinds, outlets, settingsAtMost: 1, basks: false },
  swingMinutes: [0, 40],
}));

const A_YEAR: readonly ShelfSize[] = (
  [
    [8, 3, 8, 3],
    [20, 5, 10, 5],
  ] as const
).map(([enclosures, dials, kinds, outlets]) => ({
  ...{ enclosures, dials, kinds, outlets, settingsAtMost: 8, basks: false },
  swingMinutes: [60, 200],
}));

const WITH_BASKING: readonly ShelfSize[] = (
  [
    [60, 12, 8, 12],
    [180, 40, 12, 12],
    [180, 40, 180, 12],
  ] as const
).map(([enclosures, dials, kinds, outlets]) => ({
  ...{ enclosures, dials, kinds, outlets, settingsAtMost: 8, basks: true },
  swingMinutes: [60, 200],
}));

interface Ours {
  readonly ms: number;
  readonly lamps: number;
  readonly worst: number;
  readonly atLeast: number;
  readonly isProven: boolean;
  readonly day: number;
  readonly dayAtLeast: number;
  readonly program: AlikeShelf;
}

function placed(care: Care, outlets: number): Ours {
  const { dayTargets, offsets } = solveLighting(
    { ...care, enclosures: care.enclosures.map((each) => ({ ...each, lamps: [] })) },
    null,
    care.plan.from,
    new Log(),
  );
  const lamps = shelfLamps(care, dayTargets);
  const { groups } = agreeingGroups(care, lamps, new Map(), new Log());
  const history = (timer: Parameters<typeof historyOf>[0]) => historyOf(timer, null, care.plan, care.plan.from);
  const begun = process.cpuUsage();
  const { auto } = placeAutoLamps(care, lamps, groups, offsets, history, new Log());
  const { user, system } = process.cpuUsage(begun);
  const [worst, day] = auto?.levels ?? [];
  return {
    ms: (user + system) / 1000,
    lamps: lamps.length,
    worst: worst?.value ?? Number.NaN,
    atLeast: worst?.atLeast ?? Number.NaN,
    isProven: auto?.isProven ?? false,
    day: day?.value ?? Number.NaN,
    dayAtLeast: day?.atLeast ?? Number.NaN,
    program: {
      targets: care.enclosures.map(({ id }) => [...(dayTargets.get(id) ?? [])]),
      dials: care.devices.length,
      outlets,
      stepMinutes: STEP_MINUTES,
    },
  };
}

function boundWords({ isProven, worst, atLeast, day, dayAtLeast }: Ours): string {
  if (isProven) return 'min, the best on every level';
  const sum = `all errors ${Math.round(day)} min a day, none under ${Math.round(dayAtLeast)}`;
  return worst === atLeast ? `min, the least there is; ${sum}` : `min, none under ${shown(atLeast)}; ${sum}`;
}

interface Others {
  readonly ms: number;
  readonly best: number | null;
  readonly atLeast: number;
}

function inHighs(work: () => { readonly best: number | null; readonly atLeast: number }): Others {
  const begun = process.cpuUsage();
  const found = work();
  const { user, system } = process.cpuUsage(begun);
  return { ms: (user + system) / 1000, best: found.best, atLeast: found.atLeast };
}

/** Whether what was found and the bound have met. */
function isProven({ best, atLeast }: Others): boolean {
  return best !== null && best - atLeast <= 1;
}

function besideRows(label: string, ours: Ours, others: Others): readonly Row[] {
  const found = others.best === null ? 'nothing' : shown(others.best / 10);
  return [
    [`${label}: worst error here`, shown(ours.worst), boundWords(ours)],
    ['  in HiGHS', found, `min, none under ${shown(Math.max(0, Math.round(others.atLeast)) / 10)}`],
    ['  processor time here', shown(Math.round(ours.ms)), 'ms, both levels and the bound'],
    [
      '  in HiGHS',
      shown(Math.round(others.ms)),
      `ms, the first level: ${isProven(others) ? '' : 'stopped, not proven; more than '}${times(others.ms, ours.ms)}`,
    ],
  ];
}

interface Compared {
  readonly size: ShelfSize;
  readonly ours: Ours;
  readonly others: Others;
}

function rowsOf({ size, ours, others }: Compared): readonly Row[] {
  return besideRows(`${size.enclosures} lamps on ${size.dials} dials`, ours, others);
}

function besideOf({ size, ours, others }: Compared): Beside {
  const isMore = isProven(others) ? '' : 'more than ';
  return {
    work: `outlets for ${size.enclosures} lamps on ${size.dials} dials, ${size.settingsAtMost === 1 ? 'one setting' : `${size.settingsAtMost} settings`}, least worst error (here with the sum and the bound too)`,
    ours: `${shown(Math.round(ours.ms))} ms`,
    other: 'HiGHS',
    takes: `${isMore}${shown(Math.round(others.ms))} ms`,
    ratio: `${isMore}${times(others.ms, ours.ms)}`,
  };
}

function oneSetting(size: ShelfSize): Compared {
  const ours = placed(alikeShelf(1, size), size.outlets);
  const others = inHighs(() => {
    const { worst, isProven } = leastWorstOfShelf(ours.program, SECONDS);
    return { best: worst, atLeast: isProven && worst !== null ? worst : 0 };
  });
  return { size, ours, others };
}

function aYear(size: ShelfSize): Compared {
  const care = alikeShelf(1, size);
  const saturdays = { ...care, plan: { ...care.plan, changeOn: ['sat'] as const } };
  const ours = placed(saturdays, size.outlets);
  const weeksFrom = [0];
  for (let day = FIRST_SATURDAY; day < care.plan.days; day += 7) weeksFrom.push(day);
  const { settingsAtMost } = size;
  const others = inHighs(() =>
    leastWorstOverWeeks({ ...ours.program, weeksFrom, settingsAtMost, atLeastBetweenDays: 14 }, SECONDS),
  );
  return { size, ours, others };
}

function alone(size: ShelfSize): Row {
  const ours = placed(alikeShelf(1, size), size.outlets);
  const label = `${ours.lamps} lamps of ${size.kinds} kinds of days on ${size.dials} dials`;
  return [label, shown(ours.worst), `${boundWords(ours)}; ${shown(Math.round(ours.ms))} ms`];
}

export async function run(): Promise<readonly Table[]> {
  for (const size of ONE_SETTING.slice(0, 1)) placed(alikeShelf(2, size), size.outlets);
  const ones = ONE_SETTING.map(oneSetting);
  const years = A_YEAR.map(aYear);
  const [smallest, largest] = [ones.at(0), ones.at(-1)];
  return [
    {
      name: `Lamps on auto, one setting in the plan, beside HiGHS for ${SECONDS} s at most`,
      rows: ones.flatMap(rowsOf),
      beside: [smallest, largest].flatMap((each) => (each ? [besideOf(each)] : [])),
    },
    {
      name: `Lamps on auto, 8 settings changed on Saturdays, beside HiGHS for ${SECONDS} s at most`,
      rows: years.flatMap(rowsOf),
      beside: years.slice(-1).map(besideOf),
    },
    { name: 'Day and basking lamps on auto, 8 settings: the worst error', rows: WITH_BASKING.map(alone) },
  ];
}
