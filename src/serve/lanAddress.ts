import { networkInterfaces } from 'node:os';

/** This machine's addresses in a home or shop network: private IPv4 ones (RFC 1918), and no others. */
export function lanAddresses(
  interfaces: ReturnType<typeof networkInterfaces> = networkInterfaces(),
): readonly string[] {
  return Object.values(interfaces)
    .flatMap((addresses) => addresses ?? [])
    .filter(({ family, internal, address }) => family === 'IPv4' && !internal && isPrivate(address))
    .map(({ address }) => address);
}

/** Whether an IPv4 address is private: 10/8, 172.16/12 or 192.168/16 (RFC 1918, section 3). */
export function isPrivate(address: string): boolean {
  const [a, b] = address.split('.').map(Number);
  return a === 10 || (a === 172 && b! >= 16 && b! <= 31) || (a === 192 && b === 168);
}
