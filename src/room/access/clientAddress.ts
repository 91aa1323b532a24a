import type { IncomingMessage } from 'node:http';
import { networkOf } from './networkOf.ts';

/** The client's address. X-Forwarded-For counts only behind the operator's own proxy: anybody can send that header. */
export const clientAddress = (incoming: IncomingMessage, trustProxy: boolean): string => {
  const direct = networkOf(incoming.socket.remoteAddress ?? '') ?? '';
  if (!trustProxy) return direct;
  const forwarded = incoming.headers['x-forwarded-for'];
  const list = (Array.isArray(forwarded) ? forwarded.join(',') : (forwarded ?? '')).split(',');
  // Our own proxy wrote the last entry.
  return networkOf(list.at(-1) ?? '') ?? direct;
};
