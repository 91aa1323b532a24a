import { networkInterfaces } from 'node:os';

export interface Address {
  bind: string;
  port: number;
  /** The public address, if there is a proxy or a host name in front of the room. */
  url?: string;
}

const loopbacks = ['127.0.0.1', 'localhost', '[::1]'];

const isWildcard = (bind: string) => bind === '0.0.0.0' || bind === '::';
const inUrl = (bind: string) => (bind.includes(':') ? `[${bind}]` : bind);

export const lanAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => address);

/**
 * The Host headers that the room accepts, against DNS rebinding: another site can point its own name at our address,
 * and only the Host header gives that away.
 */
export const allowedHosts = ({ bind, port, url }: Address): ReadonlySet<string> => {
  const names = [...loopbacks, ...(isWildcard(bind) ? lanAddresses() : [inUrl(bind)])];
  const hosts = names.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));
  return new Set([...hosts, ...(url === undefined ? [] : [new URL(url).host])]);
};

/** The origin of our page when it was requested under this host. */
export const originOf = (host: string, { url }: Address): string => {
  if (url !== undefined && new URL(url).host === host) return new URL(url).origin;
  return `http://${host}`;
};

export const shownUrl = (address: Address): string => {
  const { bind, port, url } = address;
  if (url !== undefined) return url.replace(/\/$/, '');
  const name = isWildcard(bind) ? (lanAddresses()[0] ?? '127.0.0.1') : inUrl(bind);
  return `http://${name}${port === 80 ? '' : `:${port}`}`;
};
