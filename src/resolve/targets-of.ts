/** The merged targets in the form that solving works from, and the targets that nobody said and this tool took. */
import { clockTimeOf } from '../basics/minute-of-day.ts';
import type { ReadHumidity, ReadTargets, ReadTemperature, ReadWater } from '../read/targets.ts';
import type { Stage, Targets } from './care.ts';
import { DEFAULT_MIDDAY_MINUTE, dayPlacement, insetOf, photoperiodOf, uvbOf } from './photoperiod.ts';
import type { DefaultTarget } from './target-records.ts';

export type Activity = 'diurnal' | 'nocturnal' | 'crepuscular';

/** Film below this share of its capacity counts as dry where the profile does not say. */
const DEFAULT_DRY_BELOW = 0.2;
/** A pump may run again right after a dusted feed where the profile does not say. */
const DEFAULT_DRY_BEFORE_MIST_MINUTES = 0;

export interface TargetsContext {
  readonly activity: Activity;
  /** Why the household file accepts temperatures beyond the limits; null where it does not. */
  readonly limitsWaivedBecause: string | null;
  readonly mayGoWithoutDays: Readonly<Record<string, number>>;
  readonly stages: Readonly<Record<string, Stage>>;
}

/** Returns the targets; null where no day length was said. */
export function targetsOf(said: ReadTargets, context: TargetsContext): Targets | null {
  const photoperiod = said.photoperiod && photoperiodOf(said.photoperiod);
  if (!photoperiod) return null;
  return {
    rangeLatitude: said.range?.latitude ?? null,
    photoperiod,
    day: dayPlacement(said.day),
    basking: said.basking === undefined || said.basking === 'none' ? null : insetOf(said.basking),
    uvb: uvbOf(said.uvb),
    temperature: { ...temperatureOf(said.temperature ?? {}), limitsWaivedBecause: context.limitsWaivedBecause },
    humidity: humidityOf(said.humidity ?? {}),
    water: waterOf(said.water ?? {}, context.activity),
    misting: mistingOf(said.misting),
    moistHide: moistHideOf(said.moist_hide),
    feeding: feedingOf(said.feeding),
    mayGoWithoutDays: context.mayGoWithoutDays,
    stages: context.stages,
  };
}

/** Returns the temperatures in °C, null where nothing is said. */
export function temperatureOf(said: ReadTemperature): Omit<Targets['temperature'], 'limitsWaivedBecause'> {
  return {
    dayC: said.day ?? null,
    nightC: said.night ?? null,
    baskingC: said.basking ?? null,
    neverBelowC: said.never_below ?? null,
    neverAboveC: said.never_above ?? null,
  };
}

/** Returns the humidities as fractions and the rest in hours and counts, null where nothing is said. */
export function humidityOf(said: ReadHumidity): Targets['humidity'] {
  return {
    day: said.day ?? null,
    night: said.night ?? null,
    mean: said.mean ?? null,
    peak: said.peak ?? null,
    peaksPerDay: said.peaks_per_day ?? null,
    floor: said.floor ?? null,
    ceiling: said.ceiling ?? null,
    soakedAtMostHours: said.soaked_at_most ?? null,
  };
}

function waterOf(said: ReadWater, activity: Activity): Targets['water'] {
  const drink = said.drink === 'none' ? undefined : said.drink;
  const dryOut = said.dry_out === 'none' ? undefined : said.dry_out;
  return {
    drink: drink
      ? { when: drink.when ?? drinkHours(activity), mists: drink.mists, atLeastSeconds: drink.at_least }
      : null,
    dish: said.dish && said.dish !== 'none' ? { changeEveryDays: said.dish.change_every } : null,
    soak: said.soak && said.soak !== 'none' ? { minutes: said.soak.minutes, perWeek: said.soak.per_week } : null,
    dryOut: dryOut
      ? { atLeastMinutes: dryOut.at_least, when: dryOut.when ?? 'lit', below: dryOut.below ?? DEFAULT_DRY_BELOW }
      : null,
    noMist: said.no_mist ?? [],
  };
}

function drinkHours(activity: Activity): 'lit' | 'dark' {
  return activity === 'diurnal' ? 'lit' : 'dark';
}

function mistingOf(said: ReadTargets['misting']): Targets['misting'] {
  if (said === undefined || said === 'none') return said ?? null;
  return { perDay: said.per_day, seconds: said.seconds, gapMinutes: said.gap ?? null, favour: said.favour ?? null };
}

function moistHideOf(said: ReadTargets['moist_hide']): Targets['moistHide'] {
  return said === undefined || said === 'none' ? null : { humidity: said.humidity, dampenEveryDays: said.dampen_every };
}

function feedingOf(said: ReadTargets['feeding']): Targets['feeding'] {
  if (!said) return null;
  return {
    from: said.from,
    to: said.to,
    dryBeforeMistMinutes: said.dry_before_mist ?? DEFAULT_DRY_BEFORE_MIST_MINUTES,
  };
}

/** Returns the targets that were left unsaid and have a value all the same, each with its reason. */
export function defaultTargets(said: ReadTargets, activity: Activity): readonly DefaultTarget[] {
  const found: DefaultTarget[] = [];
  const take = (isMissing: boolean, path: string, value: unknown, unit: string, why: string) => {
    if (isMissing) found.push({ path, value, unit, why });
  };
  const { day, water, misting, humidity } = said;
  const isUnplaced = day?.midday === undefined && day?.lights_on === undefined && day?.lights_off === undefined;
  take(
    isUnplaced,
    'day.midday',
    clockTimeOf(DEFAULT_MIDDAY_MINUTE),
    'text',
    'middle of the animal’s day where the file does not place it',
  );
  take(said.photoperiod?.season === undefined, 'photoperiod.season', 'site', 'text', 'the year runs as at the site');
  const drink = water?.drink;
  take(
    drink !== undefined && drink !== 'none' && drink.when === undefined,
    'water.drink.when',
    drinkHours(activity),
    'text',
    'when the species is awake',
  );
  const dryOut = water?.dry_out;
  const driesOut = dryOut !== undefined && dryOut !== 'none';
  take(driesOut && dryOut.when === undefined, 'water.dry_out.when', 'lit', 'text', 'leaves dry by day');
  take(
    driesOut && dryOut.below === undefined,
    'water.dry_out.below',
    DEFAULT_DRY_BELOW,
    '1',
    'a film below this share of what leaves hold counts as dry',
  );
  const isMisted = misting !== 'none' && (misting !== undefined || humidity?.peak !== undefined);
  const favour = misting === 'none' ? undefined : misting?.favour;
  take(
    isMisted && favour === undefined,
    'misting.favour',
    activity === 'diurnal' ? 'dawn-and-dusk' : 'dusk',
    'text',
    'the usual rhythm of the species’ hours',
  );
  take(
    said.feeding !== undefined && said.feeding.dry_before_mist === undefined,
    'feeding.dry_before_mist',
    DEFAULT_DRY_BEFORE_MIST_MINUTES,
    'min',
    'no pause asked for after a dusted feed',
  );
  return found;
}
