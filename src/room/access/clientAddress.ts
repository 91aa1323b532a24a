import type { IncomingMessage } from 'node:http';

/** Networks hand out IPv6 addresses by the /64: all of one are one. */
const network = (address: string): string => {
  const plain = address.replace(/^::ffff:/, '');
  return plain.includes(':') ? plain.split(':').slice(0, 4).join(':') : plain;
};

/** Who asks. What a proxy says of it counts only when the operator has one: anybody can write that line. */
export const clientAddress = (incoming: IncomingMessage, trustProxy: boolean): string => {
  const direct = incoming.socket.remoteAddress ?? '';
  if (!trustProxy) return network(direct);
  const forwarded = incoming.headers['x-forwarded-for'];
  const list = (Array.isArray(forwarded) ? forwarded.join(',') : (forwarded ?? '')).split(',');
  // The last is the one that our own proxy wrote.
  const last = list.at(-1)?.trim() ?? '';
  return network(last === '' ? direct : last.slice(0, 45));
};
