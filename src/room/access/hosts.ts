import { networkInterfaces } from 'node:os';

export interface Address {
  bind: string;
  port: number;
  /** The address that people use, when a proxy or a name stands before the room. */
  url?: string;
}

const loopbacks = ['127.0.0.1', 'localhost', '[::1]'];

const isLoopback = (bind: string) => bind === '127.0.0.1' || bind === '::1' || bind === 'localhost';
const everywhere = (bind: string) => bind === '0.0.0.0' || bind === '::';

/** This machine's addresses on its networks. */
export const lanAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => address);

/**
 * The hosts that the room answers to. A page of another site can make its own name lead to our address, and would
 * then be "us" to the browser: only by the name that it asks for can it be told apart.
 */
export const allowedHosts = ({ bind, port, url }: Address): ReadonlySet<string> => {
  const names = [
    ...loopbacks,
    ...(everywhere(bind)
      ? lanAddresses()
      : isLoopback(bind)
        ? []
        : [bind.includes(':') ? `[${bind}]` : bind]),
  ];
  const hosts = names.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));
  return new Set([...hosts, ...(url === undefined ? [] : [new URL(url).host])]);
};

/** The origin that a page of ours has when it was asked for under this host. */
export const originOf = (host: string, { url }: Address): string => {
  if (url !== undefined && new URL(url).host === host) return new URL(url).origin;
  return `http://${host}`;
};

/** What people are told to open. */
export const shownUrl = (address: Address): string => {
  const { bind, port, url } = address;
  if (url !== undefined) return url.replace(/\/$/, '');
  const name = everywhere(bind)
    ? (lanAddresses()[0] ?? '127.0.0.1')
    : bind.includes(':')
      ? `[${bind}]`
      : bind;
  return `http://${name}${port === 80 ? '' : `:${port}`}`;
};
