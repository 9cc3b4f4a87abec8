/** A profile, and the `targets` of a household, which take the same keys. */
import { type Field, later, list, named, optional, record } from '../field.ts';
import type { ProfileTree, ReadSource, ReadTargets } from '../targets.ts';
import { choice, text } from '../values.ts';
import { humidity, misting, moistHide, temperature, water } from './air-targets.ts';
import { feeding, mayGoWithout, profileChore, stages } from './feeding-targets.ts';
import { format } from './format.ts';
import { basking, day, latitude, photoperiod, uvb } from './light-targets.ts';
import { SOURCE_KEYS, said, sourced } from './said.ts';

const activity = () => choice(['diurnal', 'nocturnal', 'crepuscular'] as const);

const targetKeys = () => ({
  range: optional(later(range)),
  photoperiod: optional(later(photoperiod)),
  day: optional(later(day)),
  basking: optional(later(basking)),
  uvb: optional(later(uvb)),
  temperature: optional(later(temperature)),
  humidity: optional(later(humidity)),
  water: optional(later(water)),
  misting: optional(later(misting)),
  moist_hide: optional(later(moistHide)),
  feeding: optional(later(feeding)),
  may_go_without: optional(later(mayGoWithout)),
  stages: optional(later(stages)),
  chores: optional(later(chores)),
  sources: optional(later(sources)),
  ...SOURCE_KEYS,
});

const range = () => said(sourced({ latitude: said(latitude()) }));
const chores = () => said(list(profileChore(), '[{ id: weigh, title: Weigh and note, every: 1 month }]', 0));

const TARGET_WORDS = {
  range: 'where the species comes from',
  photoperiod: 'day length over the year',
  day: 'where the lit hours stand in the day',
  basking: 'hours of the basking lamp inside the lit hours',
  uvb: 'hours and zone of UV light',
  temperature: 'air and basking place',
  humidity: 'relative humidity',
  water: 'drinking, drying, when not to mist',
  misting: 'a cadence of mists: a target by itself, or a bound beside humidity',
  moist_hide: 'a hide that is kept moist, or none',
  feeding: 'hours in which it may be fed',
  may_go_without: 'days without food that each stage bears',
  stages: 'feeds and dustings by stage',
  chores: 'jobs that the species asks for',
  sources: 'literature by key',
};

function sources(): Field<Readonly<Record<string, ReadSource>>> {
  const source = record(
    { cite: text('Author A (2002) Journal 1:1-2'), read: choice(['opened', 'excerpt', 'memory'] as const) },
    { cite: 'the citation', read: 'how it was read: opened, excerpt or memory' },
  );
  return named(text('author2002'), source);
}

/** The `targets` of an enclosure or of its rest. */
export const targets: Field<ReadTargets> = later(() =>
  record({ activity: optional(said(activity())), ...targetKeys() }, TARGET_WORDS),
);

export const profile: Field<ProfileTree> = later(() =>
  record(
    {
      format: format(),
      species: text('panther-chameleon'),
      name: text('Panther chameleon'),
      scientific: text('Furcifer pardalis'),
      activity: said(activity()),
      ...targetKeys(),
    },
    {
      species: 'the id of the profile',
      name: 'the common name',
      scientific: 'the scientific name',
      ...TARGET_WORDS,
    },
  ),
);
