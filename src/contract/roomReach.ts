import { BlockList, isIPv6 } from 'node:net';

/** From where an address can be opened: this machine alone, a network like the studio's, or anywhere. */
export type Reach = 'machine' | 'network' | 'anywhere';

/** A list holds IPv4 addresses also as they are written inside IPv6: ::ffff:7f00:1. */
const listOf = (...subnets: readonly (readonly [net: string, prefix: number])[]): BlockList => {
  const list = new BlockList();
  for (const [net, prefix] of subnets) list.addSubnet(net, prefix, isIPv6(net) ? 'ipv6' : 'ipv4');
  return list;
};

/** Loopback: RFC 1122 and 4291. */
const loopback = listOf(['127.0.0.0', 8], ['0.0.0.0', 8], ['::', 127]);
/** Private, shared, unique local and link-local addresses: RFC 1918, 6598, 4193, 3927 and 4291. */
const local = listOf(
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['100.64.0.0', 10],
  ['169.254.0.0', 16],
  ['fc00::', 7],
  ['fe80::', 10],
);

/** Who can open an address. A name without a dot, and one that ends in `.local`, are known to one network only. */
export const reachOf = (url: string): Reach => {
  const host = new URL(url).hostname.toLowerCase().replace(/\.$/, '');
  const address = host.replace(/^\[|\]$/g, '');
  const family = isIPv6(address) ? 'ipv6' : 'ipv4';
  if (loopback.check(address, family) || /(?:^|\.)localhost$/.test(host)) return 'machine';
  if (local.check(address, family) || /\.(?:local|lan|home\.arpa|internal)$/.test(host)) return 'network';
  return /[.:]/.test(host) ? 'anywhere' : 'network';
};
