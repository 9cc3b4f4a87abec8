/** Where each number of an enclosure's air comes from: fitted to a gauge, estimated, or said by the file. */
import type { AirModel, Plan } from '../../plan/plan.ts';

const FIELDS: readonly (readonly [keyof AirModel, string, string])[] = [
  ['airChangesPerHour', 'air changes', 'an hour'],
  ['baselineGPerHour', 'evaporation without mist', 'g/h'],
  ['transferMPerHour', 'drying of wet leaves', 'm/h'],
  ['wettableAreaM2', 'leaves and walls that take water', 'm²'],
  ['filmCapacityG', 'water that they hold', 'g'],
  ['landsShare', 'share of a mist that lands there', ''],
  ['airborneShare', 'share that evaporates before it lands', ''],
  ['flowGPerHour', 'flow of the nozzles', 'g/h'],
  ['warmUpMinutes', 'lag of the air behind the lamps', 'min'],
  ['volumeM3', 'volume', 'm³'],
];

/** Returns the numbers with their origins; null where the plan has no air of that enclosure. */
export function whyAir(plan: Plan, enclosure: string): string | null {
  const index = plan.misting.findIndex((each) => each.enclosure === enclosure);
  const model = plan.misting[index]?.model;
  if (!model) return null;
  const name = plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure;
  const lines = FIELDS.flatMap(([field, words, unit]) => {
    const value = model[field];
    if (value === undefined) return [];
    return [`  ${words}: ${valueWords(field, value, unit)}`, `      ${originOf(plan, index, field, value)}`];
  });
  return `${name}: its air\n${lines.join('\n')}\n`;
}

function valueWords(field: keyof AirModel, value: number, unit: string): string {
  if (field === 'landsShare' || field === 'airborneShare') return `${Number((100 * value).toFixed(1))} %`;
  return `${Number(value.toPrecision(4))} ${unit}`;
}

function originOf({ assumptions }: Plan, index: number, field: keyof AirModel, value: number): string {
  const taken = assumptions.find(({ path }) => path === `misting[${index}].model.${field}`)?.source;
  return taken ?? shareOrigin(field, value) ?? 'said by your file';
}

/** A share that pumps and foggers have where the file names none is never called the file's. */
function shareOrigin(field: keyof AirModel, value: number): string | null {
  if (field === 'airborneShare' && value === 0) return 'taken where the file says no airborne: drops fall or land';
  if (field === 'airborneShare' && value === 1) return 'taken of a fogger where the file says no airborne: fog floats';
  if (field === 'landsShare' && value === 0) return 'taken where the file says no lands: nothing is sprayed that lands';
  return null;
}
