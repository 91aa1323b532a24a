import { Agent, request, type IncomingMessage } from 'node:http';
import { randomBytes } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';

const agent = new Agent({ keepAlive: true, maxSockets: 400 });

const open = (
  port: number,
  method: string,
  path: string,
  cookie: string,
  /** Each phone has its own address, as on a network. */
  localAddress: string,
  body?: object,
): Promise<IncomingMessage> =>
  new Promise((resolve, reject) => {
    const host = `127.0.0.1:${port}`;
    const sent = request(
      {
        agent,
        host: '127.0.0.1',
        localAddress,
        port,
        method,
        path,
        headers: { host, origin: `http://${host}`, cookie, 'content-type': 'application/json' },
      },
      resolve,
    );
    sent.on('error', reject);
    sent.end(body && JSON.stringify(body));
  });

const read = async (message: IncomingMessage): Promise<string> => {
  let text = '';
  for await (const chunk of message) text += String(chunk);
  if (message.statusCode !== 200) throw new Error(`${message.statusCode}: ${text}`);
  return text;
};

const name = (n: number) =>
  `Phone ${String.fromCharCode(97 + (n % 26))}${String.fromCharCode(97 + Math.floor(n / 26))}`;

/** Phones in one room, each listening and sending a line about every second, until stopped. */
export const roomCrowd = async (port: number, many: number) => {
  const answers: number[] = [];
  const heard: number[] = [];
  const sentAt = new Map<string, number>();
  const underWay: Promise<void>[] = [];
  let going = true;
  const listen = (stream: IncomingMessage, own: Set<string>) => {
    stream.on('error', () => undefined);
    stream.on('data', (data: Buffer) => {
      for (const [, id = ''] of data.toString().matchAll(/^data: \{"no":\d+,"id":"([0-9a-f]{32})"/gm)) {
        const began = sentAt.get(id);
        if (began !== undefined && !own.has(id)) heard.push(performance.now() - began);
      }
    });
  };
  const live = async (n: number) => {
    const at = `127.0.1.${n + 1}`;
    const entered = await open(port, 'POST', '/api/sign-in', '', at, { name: name(n) });
    const cookie = (entered.headers['set-cookie'] ?? []).map((one) => one.split(';')[0]).join('; ');
    await read(entered);
    const stream = await open(port, 'GET', '/api/stream?after=1000000', cookie, at);
    const own = new Set<string>();
    listen(stream, own);
    await sleep((1_000 * n) / many);
    for (let i = 0; going; i += 1) {
      const id = randomBytes(16).toString('hex');
      own.add(id);
      const line =
        i % 4 === 0
          ? '/reading bucket:"Dory Blue" gravity:1.44 seconds:14 stirred:yes'
          : '/water-or-stir dory';
      const began = performance.now();
      sentAt.set(id, began);
      await read(await open(port, 'POST', '/api/say', cookie, at, { id, line }));
      answers.push(performance.now() - began);
      await sleep(1_000);
    }
    stream.destroy();
  };
  for (let n = 0; n < many; n += 1) underWay.push(live(n));
  await sleep(2_000);
  return {
    stop: async () => {
      going = false;
      await Promise.all(underWay);
      return { answers, heard };
    },
  };
};
