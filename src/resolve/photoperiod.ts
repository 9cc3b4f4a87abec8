/** The target day length and where the day sits, from what was said and what is taken where nothing was. */

import type { ReadDay, ReadInset, ReadPhotoperiod } from '../read/targets.ts';
import type { DayPlacement, Edge, Inset, Photoperiod, Season, Targets } from './care.ts';

/** Noon of the animal's day where nobody says it; our choice, near the middle of a household's waking day. */
export const DEFAULT_MIDDAY_MINUTE = 13 * 60;

/** Returns the day length; null where no form of it was said. */
export function photoperiodOf(said: ReadPhotoperiod): Photoperiod | null {
  const form = formOf(said);
  if (!form) return null;
  return { form, season: seasonOf(said), atLeastMinutes: said.at_least ?? null, atMostMinutes: said.at_most ?? null };
}

function formOf(said: ReadPhotoperiod): Photoperiod['form'] | null {
  if (said.hours !== undefined) return { kind: 'constant', minutes: said.hours };
  if (said.longest !== undefined && said.shortest !== undefined)
    return { kind: 'seasonal', longestMinutes: said.longest, shortestMinutes: said.shortest };
  if (said.latitude !== undefined) return { kind: 'latitude', latitude: said.latitude };
  if (said.months) return { kind: 'months', minutes: said.months };
  return null;
}

function seasonOf(said: ReadPhotoperiod): Season {
  const season = said.season ?? 'site';
  if (typeof season === 'string') return { kind: season };
  return { kind: 'moved', was: season.was, becomes: season.becomes, from: season.from, overDays: season.over };
}

/** Returns the longest and shortest day of a form in minutes, clamps included; null where it follows the sun. */
export function dayLengthRange(
  photoperiod: Photoperiod,
): { readonly longest: number; readonly shortest: number } | null {
  const lengths = statedLengths(photoperiod.form);
  if (!lengths) return null;
  const clamp = (minutes: number) =>
    Math.max(photoperiod.atLeastMinutes ?? 0, Math.min(photoperiod.atMostMinutes ?? 1440, minutes));
  return { longest: clamp(Math.max(...lengths)), shortest: clamp(Math.min(...lengths)) };
}

function statedLengths(form: Photoperiod['form']): readonly number[] | null {
  switch (form.kind) {
    case 'constant':
      return [form.minutes];
    case 'seasonal':
      return [form.longestMinutes, form.shortestMinutes];
    case 'months':
      return form.minutes;
    case 'latitude':
      return null;
  }
}

/** Returns the placement; midday at 13:00 where neither midday nor an edge was said. */
export function dayPlacement(said: ReadDay | undefined): DayPlacement {
  return {
    anchor: anchorOf(said),
    noLightBeforeMinute: said?.no_light_before ?? null,
    noLightAfterMinute: said?.no_light_after ?? null,
  };
}

function anchorOf(said: ReadDay | undefined): DayPlacement['anchor'] {
  if (said?.lights_on !== undefined) return { kind: 'lights-on', minute: said.lights_on };
  if (said?.lights_off !== undefined) return { kind: 'lights-off', minute: said.lights_off };
  return { kind: 'midday', minute: said?.midday ?? DEFAULT_MIDDAY_MINUTE };
}

/** Returns the inset; null where none of its forms was said. */
export function insetOf(said: ReadInset): Inset | null {
  if (said.spans)
    return {
      form: 'spans',
      spans: said.spans.map(({ at, for: minutes }) => ({ at: edgeOf(at), forMinutes: minutes })),
    };
  if (said.hours !== undefined) return { form: 'hours', minutes: said.hours };
  if (said.after_lights_on === undefined && said.before_lights_off === undefined) return null;
  return {
    form: 'edges',
    afterLightsOnMinutes: said.after_lights_on ?? 0,
    beforeLightsOffMinutes: said.before_lights_off ?? 0,
  };
}

function edgeOf(said: Edge): Edge {
  return { of: said.of, minutes: said.minutes };
}

/** Returns the UV target; `unplaced` where only the zone was said, null where neither. */
export function uvbOf(said: (ReadInset & { readonly ferguson_zone?: number }) | 'none' | undefined): Targets['uvb'] {
  if (said === undefined || said === 'none') return null;
  const inset = insetOf(said);
  const zone = said.ferguson_zone ?? null;
  if (inset) return { ...inset, fergusonZone: zone };
  return zone === null ? null : { fergusonZone: zone, form: 'unplaced' };
}
