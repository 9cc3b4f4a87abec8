/** The names under which this machine may be asked: a page elsewhere that points its own name here is refused. */

/** Returns the host of a `Host` header in lower case, without port and brackets; null where it is none. */
export function hostName(header: string | undefined): string | null {
  const match = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9._-]+))(?::\d{1,5})?$/i.exec(header ?? '');
  const name = match?.[1] ?? match?.[2];
  return name === undefined ? null : name.toLowerCase().replace(/\.$/, '');
}

/** Returns the name of an address of a socket as a `Host` header has it. */
export function addressName(address: string | undefined): string {
  return (address ?? '')
    .toLowerCase()
    .replace(/^::ffff:(?=\d+\.)/, '')
    .replace(/%.*$/, '');
}

const LOOPBACK: readonly string[] = ['localhost', '127.0.0.1', '::1'];

/**
 * Returns the names that are always right.
 *
 * @param machine the machine's own name where it is open to the home network, else null
 * @param given what `--host` names
 */
export function ownNames(machine: string | null, given: string | null): ReadonlySet<string> {
  const names = machine === null ? [] : [machine, `${machine.replace(/\.local$/i, '')}.local`];
  return new Set([...LOOPBACK, ...names, ...(given === null ? [] : [given])].map((name) => name.toLowerCase()));
}
