/** Advice as the plan keeps it, and its way into the log: the same words whether the plan was solved now or stood already. */

import { water } from '../../../diagnostics/catalogue/water.ts';
import { catalogue } from '../../../diagnostics/catalogue.ts';
import type { Place, Wording } from '../../../diagnostics/diagnostic.ts';
import type { Log } from '../../../diagnostics/log.ts';
import type { MistAdvice, MistPlan, MistSubject } from '../../../plan/plan.ts';
import type { WaterNoteCode, WaterNoteWords } from '../../../plan/words/water-en.ts';
import { words } from '../../../plan/words/words.ts';
import type { Care, CareEnclosure, Path } from '../../../resolve/care.ts';

export type WaterCode = keyof typeof water;
type Values = Readonly<Record<string, string | number>>;
type ValuesOf<C extends WaterCode> = (typeof water)[C] extends Wording<infer V> ? V : never;

/** Returns a message of the catalogue as advice. */
export function warned<C extends WaterCode>(code: C, values: ValuesOf<C>, about: MistSubject): MistAdvice {
  const { because, instead } = catalogue[code] as unknown as Wording<ValuesOf<C>>;
  const what = because(values);
  const then = instead(values);
  return { code, message: then === '' ? what : `${what}; ${then}`, values: values as unknown as Values, about };
}

/** Returns what is only told, in the language of the household. */
export function told<C extends WaterNoteCode>(
  care: Care,
  code: C,
  values: Parameters<WaterNoteWords[C]>[0],
): MistAdvice {
  const say = words(care.language).water.notes[code] as (values: Parameters<WaterNoteWords[C]>[0]) => string;
  return { code, message: say(values), values: values as Values };
}

/** Reports everything in the advice of a plan that is a message of the catalogue. */
export function reportAdvice(care: Care, enclosure: CareEnclosure, { advice }: MistPlan, log: Log): void {
  for (const { code, values, about } of advice) {
    if (!about || !values || !(code in water)) continue;
    log.report(code as 'humidity-short', values as never, placeOf(care, enclosure, about));
  }
}

function placeOf(care: Care, enclosure: CareEnclosure, about: MistSubject): Place | null {
  const { path, id } = enclosure;
  if (about.startsWith('targets.'))
    return care.placeOfTarget(id, about.slice('targets.'.length)) ?? care.placeOf([...path, 'species']);
  const pump = care.devices.find((device) => device.id === enclosure.mist);
  const paths: Readonly<Record<string, Path>> = {
    mist: [...path, 'mist'],
    open: [...path, 'open'],
    tank: pump ? [...pump.path, 'tank'] : [...path, 'mist'],
    tray: [...path, 'tray'],
    noise: ['noise'],
    size: [...path, 'size'],
    room: ['site', 'room'],
    sets: ['plan', 'mist_sets_at_most'],
  };
  return care.placeOf(paths[about] ?? path);
}
