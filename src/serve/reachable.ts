/** Addresses of this machine that a phone on the same network can reach. */
import type { NetworkInterfaceInfo } from 'node:os';

type Interfaces = Readonly<
  Record<string, readonly Pick<NetworkInterfaceInfo, 'address' | 'family' | 'internal'>[] | undefined>
>;

/** Returns them, private IPv4 first, then other IPv4, then IPv6; those of a single link are left out, as a phone cannot name the link. */
export function reachableAddresses(interfaces: Interfaces): readonly string[] {
  const all = Object.values(interfaces).flatMap((list) => list ?? []);
  const outward = all.filter(({ internal, address }) => !internal && !/^(169\.254\.|fe[89ab])/i.test(address));
  const addresses = [...new Set(outward.map(({ address }) => address))];
  return addresses.toSorted((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

function rank(address: string): number {
  if (/^(192\.168\.|10\.|172\.(1[6-9]|2\d|3[01])\.)/.test(address)) return 0;
  return address.includes(':') ? 2 : 1;
}

/** Returns whether only this machine itself reaches the address. */
export function isLoopback(address: string): boolean {
  return address === 'localhost' || address === '::1' || /^127\./.test(address);
}

/** Returns the host and port of an address as a link has it. */
export function authorityOf(address: string, port: number): string {
  return `${address.includes(':') ? `[${address}]` : address}:${port}`;
}
