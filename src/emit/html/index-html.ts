/** `index.html`: the page as a file that stands by itself, for the day on which the plan was made. */
import type { Plan } from '../../plan/plan.ts';
import { pageHtml } from './page.ts';

/** Returns the page, pointing to what else is written and stands beside it. */
export function indexHtml(plan: Plan, beside: readonly { readonly path: string }[]): string {
  const files = beside.map(({ path }) => path).filter((path) => LINKED.test(path));
  return pageHtml(plan, { today: plan.made, files, served: null });
}

const LINKED = /^([^/]+\.(pdf|txt)|calendar\/[^/]+\.ics|(dials|charts)\/[^/]+\.svg)$/;
