/** Temperature, humidity, water and mists. */
import { checked, type Field, list, optional } from '../field.ts';
import type { ReadHumidity, ReadMisting, ReadTargets, ReadTemperature, ReadWater } from '../targets.ts';
import {
  band,
  bareNumber,
  choice,
  count,
  minutesNamed,
  percent,
  quantity,
  spanDays,
  spanHours,
  spanMinutes,
  spanSeconds,
} from '../values.ts';
import { orNone, timeOrEdge } from './light-targets.ts';
import { said, sourced } from './said.ts';

const CELSIUS = { least: -30, most: 80, words: '-30 °C to 80 °C' };
const celsius = (example: string): Field<number> => quantity('temperature', CELSIUS, example);
const celsiusBand = (example: string) => optional(said(band(celsius('24 °C'), example)));
const shareBand = (example: string) => optional(said(band(percent(), example)));
const UP_TO_A_DAY = { least: 0, most: 24, words: '0 h to 24 h' };
const WHOLE_DAYS = { least: 1, most: 400, whole: true, words: 'whole days, 1 to 400' } as const;
/** What comes again every so many days. */
export const intervalDays = (example: string): Field<number> => spanDays(example, WHOLE_DAYS);

/** Air temperatures, the warm spot, and the limits that are never passed. */
export function temperature(): Field<ReadTemperature> {
  return said(
    sourced(
      {
        day: celsiusBand('[24 °C, 28 °C]'),
        night: celsiusBand('[18 °C, 22 °C]'),
        basking: celsiusBand('[29 °C, 32 °C]'),
        never_below: optional(said(celsius('15 °C'))),
        never_above: optional(said(celsius('32 °C'))),
      },
      {
        day: 'air by day, low and high',
        night: 'air by night, low and high',
        basking: 'surface at the basking place, low and high',
        never_below: 'colder is dangerous',
        never_above: 'warmer is dangerous',
      },
    ),
  );
}

/** Means of day and night or of 24 h, peaks, and limits, as fractions. */
export function humidity(): Field<ReadHumidity> {
  const keys = sourced(
    {
      day: shareBand('[45 %, 60 %]'),
      night: shareBand('[50 %, 90 %]'),
      mean: shareBand('[40 %, 60 %]'),
      peak: shareBand('[70 %, 85 %]'),
      peaks_per_day: optional(said(band(count(0, 48, '2'), '[1, 3]'))),
      floor: optional(said(percent('30 %'))),
      ceiling: optional(said(percent('90 %'))),
      soaked_at_most: optional(said(spanHours('3 h', UP_TO_A_DAY))),
    },
    {
      day: 'mean relative humidity while the daylight is on',
      night: 'mean relative humidity of the rest of the day',
      mean: 'mean over 24 h, instead of day and night',
      peak: 'what a peak reaches',
      peaks_per_day: 'how many peaks a day, least and most',
      floor: 'never drier than this',
      ceiling: 'never wetter than this',
      soaked_at_most: "hours a day above the peak band's upper edge, at most",
    },
  );
  return said(
    checked<ReadHumidity>(keys, (raw, say) => {
      const beside = ['day', 'night'].filter((key) => Object.hasOwn(raw, key));
      if (Object.hasOwn(raw, 'mean') && beside.length > 0)
        say('mean-beside-halves', { beside: beside.join(' and ') }, ['mean']);
    }),
  );
}

const lightHours = () => choice(['lit', 'dark', 'any'] as const);

/** Drinking, dish, soak, the hours that are to dry out, and those without mist. */
export function water(): Field<ReadWater> {
  const drink = sourced(
    {
      when: optional(said(lightHours())),
      mists: said(count(1, 48, '1')),
      at_least: said(spanSeconds('120 s', { above: 0, words: 'more than 0 s' })),
    },
    { when: 'lit, dark or any', mists: 'at least so many mists', at_least: 'each at least so long' },
  );
  const soak = sourced({
    minutes: said(minutesNamed('15')),
    per_week: said(bareNumber({ above: 0, most: 21, words: 'more than 0 and at most 21' }, '2')),
  });
  const dryOut = sourced(
    {
      at_least: said(spanMinutes('3 h', { above: 0, most: 1440, words: 'more than 0 h and at most 24 h' })),
      when: optional(said(lightHours())),
      below: optional(said(percent('20 %'))),
    },
    {
      at_least: 'unbroken time with dry leaves',
      when: 'in which hours',
      below: 'share of the full film that counts as dry',
    },
  );
  const noMist = list(sourced({ from: timeOrEdge(), to: timeOrEdge() }), '[{ from: "18:00", to: "06:30" }]', 0);
  return said(
    sourced(
      {
        drink: optional(orNone(said(drink))),
        dish: optional(orNone(said(sourced({ change_every: said(intervalDays('1 day')) })))),
        soak: optional(orNone(said(soak))),
        dry_out: optional(orNone(said(dryOut))),
        no_mist: optional(said(noMist)),
      },
      {
        drink: 'mists long enough to drink from, or none',
        dish: 'a dish of drinking water',
        soak: 'baths, so many a week',
        dry_out: 'how long leaves must stand dry',
        no_mist: 'when no mist may begin',
      },
    ),
  );
}

/** A cadence of mists, or `none`. */
export function misting(): Field<ReadMisting | 'none'> {
  const keys = sourced(
    {
      per_day: said(band(count(0, 96, '2'), '[2, 4]')),
      seconds: said(band(spanSeconds('60 s', { above: 0, words: 'more than 0 s' }), '[60 s, 300 s]')),
      gap: optional(said(spanMinutes('2 h', { least: 0, most: 1440, words: '0 h to 24 h' }))),
      favour: optional(said(choice(['dawn', 'dusk', 'dawn-and-dusk', 'even'] as const))),
    },
    {
      per_day: 'mists a day, least and most',
      seconds: 'length of a mist, shortest and longest',
      gap: 'from start to start',
      favour: 'where in the day they gather',
    },
  );
  return orNone(said<ReadMisting>(keys));
}

/** A damp hiding place, or `none`. */
export function moistHide(): Field<NonNullable<ReadTargets['moist_hide']>> {
  return orNone(
    said(
      sourced({ humidity: said(band(percent('80 %'), '[70 %, 90 %]')), dampen_every: said(intervalDays('3 days')) }),
    ),
  );
}
