import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';
import { onTestFinished } from 'vitest';

export interface Proxy {
  /** The same database, through the proxy. */
  address: string;
  /** Cuts the connection at the next commit: before the server hears of it, or before its answer comes back. */
  cutAtCommit(when: 'before' | 'after'): void;
  /** How many connections were cut. */
  readonly cuts: number;
}

/** Passes bytes on to a database server, until it is told to cut. */
export const openProxy = async (address: string): Promise<Proxy> => {
  const { hostname, port } = new URL(address);
  let planned: 'before' | 'after' | undefined;
  let cuts = 0;
  const sockets = new Set<Socket>();
  const server = createServer((client) => {
    const behind = connect(Number(port), hostname);
    for (const socket of [client, behind]) {
      sockets.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => [client, behind].forEach((one) => one.destroy()));
    }
    let isMuted = false;
    client.on('data', (bytes) => {
      const when = bytes.includes('commit\0') ? planned : undefined;
      if (when === undefined) return void behind.write(bytes);
      planned = undefined;
      cuts += 1;
      if (when === 'before') return void client.destroy();
      isMuted = true;
      behind.write(bytes);
    });
    behind.on('data', (bytes) => (isMuted ? client.destroy() : client.write(bytes)));
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
  });
  const own = server.address();
  if (own === null || typeof own === 'string') throw new Error('the proxy has no port');
  const through = new URL(address);
  through.port = String(own.port);
  return {
    address: through.href,
    cutAtCommit: (when) => {
      planned = when;
    },
    get cuts() {
      return cuts;
    },
  };
};
