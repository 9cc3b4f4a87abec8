/** What the animals need, every number with who said it. */
import { spanWords } from '../../basics/span-words.ts';
import type { OriginRecord, PlanEnclosure, Range, TargetRecord, UnitSystem } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';
import { html, type Markup, NOTHING } from './markup.ts';

type WebWords = Words['web'];

/** Returns the list of an enclosure's targets by group, folded in; those of stages that it never reaches are left out. */
export function numbersOf(enclosure: PlanEnclosure, units: UnitSystem, { web }: Words): Markup {
  const stages = new Set(enclosure.stages.map(({ stage }) => stage));
  const shown = enclosure.targets.filter(({ path }) => {
    const [group, stage = ''] = path.split('.');
    return (group !== 'stages' && group !== 'may_go_without') || stages.has(stage);
  });
  const groups = [...new Set(shown.map(({ path }) => groupOf(path)))];
  if (groups.length === 0) return NOTHING;
  return html`<details><summary>${web.numbers}</summary>
${groups.map((group) => html`<h4>${web.groups[group] ?? group}</h4><dl>${shown.filter(({ path }) => groupOf(path) === group).map((record) => oneNumber(record, units, web))}</dl>`)}
</details>`;
}

function groupOf(path: string): string {
  return path.split('.')[0] ?? '';
}

function oneNumber(record: TargetRecord, units: UnitSystem, web: WebWords): Markup {
  const { origin, path } = record;
  const value = (of: unknown): string => valueWords(of, record, units, web);
  const others = (origin.also ?? []).map((also) => web.othersSay(value(also.value), sourceWords(also.source, web)));
  const said = [originWords(origin, web), ...(origin.why === undefined ? [] : [origin.why]), ...others];
  return html`<dt><code>${path}</code></dt><dd>${value(record.value)}<br><span class="soft">${said.join('; ')}</span></dd>`;
}

function originWords(origin: OriginRecord, web: WebWords): string {
  const place = origin.file === undefined || origin.line === undefined ? '' : web.at(origin.file, origin.line);
  const source = origin.citation ?? (origin.source === undefined ? null : sourceWords(origin.source, web));
  const read = origin.read === undefined ? [] : [web.read[origin.read]];
  return [web.origin[origin.kind](place), ...(source === null ? [] : [source]), ...read].join('; ');
}

function sourceWords(source: string, web: WebWords): string {
  return source === 'practice' ? web.practice : source === 'ours' ? web.ours : source;
}

function valueWords(value: unknown, record: TargetRecord, units: UnitSystem, web: WebWords): string {
  if (Array.isArray(value)) {
    if (value.length === 0) return web.none;
    const said = value.map((each) => valueWords(each, record, units, web));
    const isBand = value.length === 2 && value.every((each) => typeof each === 'number');
    if (!isBand) return said.join(', ');
    return said[0] === said[1] ? (said[0] ?? '') : web.between(bare(said[0] ?? '', said[1] ?? ''), said[1] ?? '');
  }
  if (typeof value === 'number') return numberWords(value, record, units, web);
  if (typeof value === 'object' && value !== null) return edgeWords(value, web);
  return value === 'none' ? web.none : String(value);
}

/** The unit of a band is said once, behind its end. */
function bare(low: string, high: string): string {
  const unit = /\s[^\d\s]+$/.exec(high)?.[0] ?? '';
  return unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low;
}

function numberWords(value: number, record: TargetRecord, units: UnitSystem, web: WebWords): string {
  switch (record.unit) {
    case '°C':
      return units === 'us'
        ? `${Math.round(value * 1.8 + 32)} °F`
        : `${web.number(String(Number(value.toFixed(1))))} °C`;
    case '°':
      return value < 0 ? web.south(web.number(String(-value))) : web.north(web.number(String(value)));
    case 'min':
      return spanWords(value);
    case 'd':
      return web.days(value);
    case '1':
      return isShare(record) ? `${web.number(String(Number((value * 100).toFixed(1))))} %` : web.number(String(value));
    default:
      return `${web.number(String(value))} ${record.unit}`;
  }
}

function isShare({ path }: TargetRecord): boolean {
  return /^(humidity\.(?!peaks_per_day)|moist_hide\.humidity|water\.dry_out\.below)/.test(path);
}

function edgeWords(value: object, web: WebWords): string {
  return Object.entries(value)
    .map(([edge, minutes]) => web.edge[edge]?.(spanWords(Number(minutes))) ?? `${edge} ${String(minutes)}`)
    .join(', ');
}

/** Returns the UV index band of an enclosure in words; nothing where it needs none. */
export function uvWords({ uvIndex }: PlanEnclosure, { web }: Words): readonly string[] {
  if (!uvIndex) return [];
  const band = ([low, high]: Range): string => web.between(web.number(String(low)), web.number(String(high)));
  return [web.uvIndex(uvIndex.fergusonZone, band(uvIndex.mean), band(uvIndex.max))];
}
