import type { IncomingMessage } from 'node:http';
import { networkOf } from './networkOf.ts';

/** Who asks. What a proxy says of it counts only when the operator has one: anybody can write that line. */
export const clientAddress = (incoming: IncomingMessage, trustProxy: boolean): string => {
  const direct = networkOf(incoming.socket.remoteAddress ?? '') ?? '';
  if (!trustProxy) return direct;
  const forwarded = incoming.headers['x-forwarded-for'];
  const list = (Array.isArray(forwarded) ? forwarded.join(',') : (forwarded ?? '')).split(',');
  // The last is the one that our own proxy wrote.
  return networkOf(list.at(-1) ?? '') ?? direct;
};
