import { describe, expect, it } from 'vitest';
import { isPrivate, lanAddresses } from '../../src/serve/lanAddress.js';
import { shareAddress } from '../../src/shop/serve.js';

describe('addresses to share at', () => {
  // RFC 1918, section 3: 10/8, 172.16/12, 192.168/16, and the neighbours of each.
  it('are private ones', () => {
    for (const address of ['10.0.0.1', '10.255.255.254', '172.16.0.1', '172.31.255.1', '192.168.0.7'])
      expect(isPrivate(address)).toBe(true);
    for (const address of [
      '9.255.255.255',
      '11.0.0.1',
      '172.15.0.1',
      '172.32.0.1',
      '192.167.1.1',
      '192.169.1.1',
      '169.254.1.1',
      '198.51.100.1',
    ])
      expect(isPrivate(address)).toBe(false);
  });

  it('are of this machine, not loopback, IPv4', () => {
    const one = { netmask: '', mac: '', cidr: null };
    const addresses = lanAddresses({
      lo: [{ ...one, address: '127.0.0.1', family: 'IPv4', internal: true }],
      wifi: [
        { ...one, address: '192.168.1.20', family: 'IPv4', internal: false },
        { ...one, address: 'fd00::1', family: 'IPv6', internal: false, scopeid: 0 },
      ],
      outside: [{ ...one, address: '203.0.113.5', family: 'IPv4', internal: false }],
    });
    expect(addresses).toEqual(['192.168.1.20']);
  });

  it('are chosen where there is one, asked for where there are several, and never guessed', () => {
    expect(shareAddress(undefined, ['10.0.0.2'])).toBeUndefined();
    expect(shareAddress(true, ['10.0.0.2'])).toBe('10.0.0.2');
    expect(shareAddress('10.0.0.2', ['192.168.1.2', '10.0.0.2'])).toBe('10.0.0.2');
    expect(shareAddress(true, ['192.168.1.2', '10.0.0.2'])).toEqual({
      where: '--share',
      what: 'this machine is in several networks',
      remedy: 'say which: --share ADDRESS, one of 192.168.1.2, 10.0.0.2',
    });
    expect(shareAddress('10.0.0.9', ['10.0.0.2'])).toEqual({
      where: '10.0.0.9',
      what: 'this is not an address of this machine in a home network',
      remedy: 'one of its addresses: 10.0.0.2',
    });
    expect(shareAddress(true, [])).toMatchObject({
      where: '--share',
      what: expect.stringContaining('no home network') as string,
    });
  });
});
