/** The table of everything that is written from a plan. Each writer knows the plan alone and is loaded when it is asked for. */

import type { Plan } from '../plan/plan.ts';
import type { EmitOptions, Product } from './product.ts';

export interface Emitter {
  readonly name: string;
  readonly isWanted: (plan: Plan, options: EmitOptions) => boolean;
  readonly load: () => Promise<Write>;
}

/** `beside` is what the writers above it in the table have written, for one that points to it. */
type Write = (
  plan: Plan,
  options: EmitOptions,
  beside: readonly Product[],
) => readonly Product[] | Promise<readonly Product[]>;

const always = (): boolean => true;

const emitters: readonly Emitter[] = [
  {
    name: 'plan.json',
    isWanted: always,
    load: async () => {
      const { planBytes } = await import('./json/plan-json.ts');
      return (plan) => [{ path: 'plan.json', content: planBytes(plan) }];
    },
  },
  {
    name: 'settings.txt',
    isWanted: always,
    load: async () => {
      const { settingsText } = await import('./text/settings.ts');
      return (plan) => [{ path: 'settings.txt', content: settingsText(plan) }];
    },
  },
  {
    name: 'changes.txt',
    isWanted: (plan) => plan.previous !== null,
    load: async () => {
      const { changesText } = await import('./text/changes.ts');
      return (plan) => [{ path: 'changes.txt', content: changesText(plan) }];
    },
  },
  {
    name: 'drawings',
    isWanted: always,
    load: async () => (await import('./svg/drawings.ts')).drawings,
  },
  {
    name: 'care-calendar.pdf',
    isWanted: (_plan, { pdf }) => pdf,
    load: async () => (await import('./pdf/care-calendar.ts')).careCalendarFiles,
  },
  {
    name: 'shelf-cards.pdf',
    isWanted: (plan, { pdf }) => pdf && plan.lighting.some(({ settings }) => settings.length > 0),
    load: async () => (await import('./pdf/shelf-card-files.ts')).shelfCardFiles,
  },
  {
    name: 'calendars',
    isWanted: always,
    load: async () => (await import('./ics/ics-files.ts')).icsFiles,
  },
  {
    name: 'index.html',
    isWanted: always,
    load: async () => {
      const { indexHtml } = await import('./html/index-html.ts');
      return (plan, _options, beside) => [{ path: 'index.html', content: indexHtml(plan, beside) }];
    },
  },
];

/** Returns every product of a plan, by path. */
export async function emitAll(plan: Plan, options: EmitOptions): Promise<readonly Product[]> {
  const products: Product[] = [];
  for (const emitter of emitters) {
    if (!emitter.isWanted(plan, options)) continue;
    const write = await emitter.load();
    products.push(...(await write(plan, options, products)));
  }
  return products.sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
}
