import type { ServerType } from '@hono/node-server';
import type { Socket } from 'node:net';
import { networkOf } from '../access/networkOf.ts';

/** In all, so that a file can still be opened; and from one address, so that others get theirs. */
const most = 2_000;
export const mostOfOneAddress = 200;

/** Lets no address hold every connection. Behind a proxy all come from one: there the proxy sees to it. */
export const limitSockets = (server: ServerType, trustProxy: boolean): void => {
  if ('maxConnections' in server) server.maxConnections = most;
  if (trustProxy) return;
  const held = new Map<string, number>();
  server.on('connection', (socket: Socket) => {
    const from = networkOf(socket.remoteAddress ?? '') ?? '';
    const count = held.get(from) ?? 0;
    if (count >= mostOfOneAddress) {
      socket.destroy();
      return;
    }
    held.set(from, count + 1);
    socket.once('close', () => {
      const left = (held.get(from) ?? 1) - 1;
      if (left > 0) held.set(from, left);
      else held.delete(from);
    });
  });
};
