import { describe, expect, it } from 'vitest';
import { authorityOf, isLoopback, reachableAddresses } from '../../../src/serve/reachable.ts';

function at(address: string, internal = false) {
  return { address, family: address.includes(':') ? ('IPv6' as const) : ('IPv4' as const), internal };
}

describe('addresses for a phone', () => {
  it('are those of the home network, the plainest first', () => {
    expect(
      reachableAddresses({
        lo: [at('127.0.0.1', true), at('::1', true)],
        wlan0: [at('fe80::1'), at('fd00::2'), at('192.168.1.5')],
        eth0: [at('203.0.113.9'), at('169.254.7.7'), at('10.0.0.4'), at('172.31.2.2'), at('172.32.2.2')],
        none: undefined,
      }),
    ).toEqual(['10.0.0.4', '172.31.2.2', '192.168.1.5', '172.32.2.2', '203.0.113.9', 'fd00::2']);
  });

  it('are none where the machine is alone', () => {
    expect(reachableAddresses({ lo: [at('127.0.0.1', true)] })).toEqual([]);
  });

  it('stand in a link with their port, those of six groups in brackets', () => {
    expect(authorityOf('192.168.1.5', 8710)).toBe('192.168.1.5:8710');
    expect(authorityOf('fd00::2', 8710)).toBe('[fd00::2]:8710');
  });

  it.each([
    ['127.0.0.1', true],
    ['127.9.9.9', true],
    ['::1', true],
    ['localhost', true],
    ['192.168.1.5', false],
    ['all', false],
  ])('%s is this machine alone: %s', (address, isAlone) => {
    expect(isLoopback(address)).toBe(isAlone);
  });
});
