import { isIP } from 'node:net';

/** The eight groups of an IPv6 address, however short it was written. */
const groupsOf = (address: string): number[] => {
  // A URL's host has no dotted part.
  const [head = '', tail] = new URL(`http://[${address}]`).hostname.slice(1, -1).split('::');
  const read = (part: string) => (part === '' ? [] : part.split(':').map((group) => parseInt(group, 16)));
  const [first, last] = [read(head), read(tail ?? '')];
  const gap = tail === undefined ? 0 : Math.max(0, 8 - first.length - last.length);
  return [...first, ...Array<number>(gap).fill(0), ...last];
};

const bareAddress = (typed: string): string => {
  const text = typed.trim();
  const bracketed = /^\[([^\]]*)\](?::\d+)?$/.exec(text)?.[1];
  const address = bracketed ?? /^(\d+\.\d+\.\d+\.\d+):\d+$/.exec(text)?.[1] ?? text;
  return address.replace(/%.*$/, '');
};

/**
 * The network of an address: IPv6 addresses are grouped by their /64, because one subscriber gets a whole /64.
 * Undefined if it is no address.
 */
export const networkOf = (typed: string): string | undefined => {
  const address = bareAddress(typed);
  const kind = isIP(address);
  if (kind !== 6) return kind === 4 ? address : undefined;
  const groups = groupsOf(address);
  const [high = 0, low = 0] = groups.slice(6);
  // An IPv4-mapped IPv6 address (RFC 4291, 2.5.5.2).
  if (groups.slice(0, 5).every((group) => group === 0) && groups[5] === 0xffff)
    return [high >> 8, high & 255, low >> 8, low & 255].join('.');
  return groups
    .slice(0, 4)
    .map((group) => group.toString(16))
    .join(':');
};
