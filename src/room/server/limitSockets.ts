import type { ServerType } from '@hono/node-server';
import type { Socket } from 'node:net';
import { networkOf } from '../access/networkOf.ts';

/** A limit in total, which leaves file handles free, and one for each address, so that others can connect. */
const most = 2_000;
export const mostOfOneAddress = 200;

/** Limits the connections from each address. Behind a proxy all have the same address, so the proxy must do it. */
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
