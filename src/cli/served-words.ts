/** What `serve` says once it answers: the addresses, and a code to scan. */
import type { HouseholdSite } from '../serve/household-site.ts';
import { qrTerminal } from '../serve/qr.ts';
import { authorityOf, isLoopback } from '../serve/reachable.ts';
import { showsUnicode, type World } from './world.ts';

export interface Served {
  readonly name: string;
  readonly site: HouseholdSite;
  /** Addresses of this machine under which it answers, the one of the links first. */
  readonly addresses: readonly string[];
  readonly port: number;
}

/** Returns the words, or one line of JSON. The addresses hold the token: they are the result, and stand nowhere else. */
export function servedWords({ name, site, addresses, port }: Served, isJson: boolean, world: World): string {
  const page = site.pageAddress();
  const feeds = site.links().map(({ person, plain, webcal }) => ({ person, http: plain, webcal: webcal.address }));
  if (isJson) return `${JSON.stringify({ page, feeds, addresses, port })}\n`;
  const others = addresses.slice(1).map((address) => authorityOf(address, port));
  const isOpen = addresses[0] !== undefined && !isLoopback(addresses[0]);
  const lines = [
    `${name} is served`,
    `  page      ${page}`,
    ...feeds.flatMap(({ person, http, webcal }) => [`  ${person.padEnd(8)}  ${webcal}`, `            ${http}`]),
    ...(others.length > 0 ? [`  also at   ${others.join(', ')}`] : []),
    isOpen
      ? '  A phone on the same network reaches it; who knows the address can read the plan, and --new-token makes another.'
      : addresses.length === 0
        ? '  This machine is in no network now, so that no phone reaches it.'
        : '  This machine alone reaches it; --host all opens it to phones on the same network.',
    '  Ctrl-C ends it.',
  ];
  const code = isOpen && showsUnicode(world) ? `\n${qrTerminal(page, world.isOutTerminal && !world.env.NO_COLOR)}` : '';
  return `${lines.join('\n')}\n${code}`;
}
