/** From where an address can be opened: this machine alone, a network like the studio's, or anywhere. */
export type Reach = 'machine' | 'network' | 'anywhere';

const v4 = (host: string): number[] | undefined => {
  const parts = /^(\d+)\.(\d+)\.(\d+)\.(\d+)$/.exec(host)?.slice(1).map(Number);
  return parts?.length === 4 ? parts : undefined;
};

/** The IPv4 address inside an IPv6 address, as `URL` writes it: ::ffff:7f00:1. */
const mappedV4 = (host: string): number[] | undefined => {
  const [, high = '', low = ''] = /^\[::ffff:([\da-f]{1,4}):([\da-f]{1,4})\]$/.exec(host) ?? [];
  if (high === '') return undefined;
  const [a, b] = [Number.parseInt(high, 16), Number.parseInt(low, 16)];
  return [a >> 8, a & 255, b >> 8, b & 255];
};

/** Loopback and private addresses: RFC 1122, 1918, 3927 and 6598. */
const reachOfV4 = ([a = 0, b = 0]: readonly number[]): Reach => {
  if (a === 127 || a === 0) return 'machine';
  const isPrivate =
    a === 10 ||
    (a === 172 && b >= 16 && b <= 31) ||
    (a === 192 && b === 168) ||
    (a === 169 && b === 254) ||
    (a === 100 && b >= 64 && b <= 127);
  return isPrivate ? 'network' : 'anywhere';
};

/** Who can open an address. A name without a dot, and one that ends in `.local`, are known to one network only. */
export const reachOf = (url: string): Reach => {
  const host = new URL(url).hostname.toLowerCase().replace(/\.$/, '');
  const numbers = v4(host) ?? mappedV4(host);
  if (numbers) return reachOfV4(numbers);
  if (host.startsWith('[')) {
    if (host === '[::1]' || host === '[::]') return 'machine';
    // Unique local and link-local addresses: RFC 4193 and 4291.
    return /^\[f(?:[cd]|e[89ab])/.test(host) ? 'network' : 'anywhere';
  }
  if (host === 'localhost' || host.endsWith('.localhost')) return 'machine';
  return !host.includes('.') || /\.(?:local|lan|home\.arpa|internal)$/.test(host) ? 'network' : 'anywhere';
};
