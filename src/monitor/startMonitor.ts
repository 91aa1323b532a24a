import { createHash, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { isIP } from 'node:net';
import { monitorWords } from '../words/platform/monitorWords.ts';
import type { Health } from './health.ts';

export interface MonitorSettings {
  bind: string;
  /** 0 takes any free port. */
  port: number;
  /** Whoever asks must send it. */
  token?: string;
}

export interface Monitored {
  health(): Promise<Health>;
  metrics(): string;
}

export interface RunningMonitor {
  url: string;
  stop(): Promise<void>;
}

const mostConnections = 50;

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Compared as digests: these are equally long, and the comparison takes as long for any guess. */
const holdsToken = ({ headers }: IncomingMessage, token: string): boolean =>
  timingSafeEqual(digest(headers.authorization ?? ''), digest(`Bearer ${token}`));

/** A page elsewhere can point its own name at this address; then its name is in the Host header. */
const isAddressedHere = ({ headers: { host = '' } }: IncomingMessage): boolean => {
  const name = host.replace(/:\d+$/, '').toLowerCase();
  return name === 'localhost' || isIP(name.replace(/^\[(.*)\]$/, '$1')) !== 0;
};

const send = (response: ServerResponse, status: number, type: string, body: string): void => {
  response.writeHead(status, {
    'content-type': type,
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
    ...(status === 401 && { 'www-authenticate': 'Bearer' }),
  });
  response.end(response.req.method === 'HEAD' ? undefined : body);
};

const plain = 'text/plain; charset=utf-8';

const answer = async (
  request: IncomingMessage,
  response: ServerResponse,
  { token }: MonitorSettings,
  monitored: Monitored,
): Promise<void> => {
  if (request.method !== 'GET' && request.method !== 'HEAD') return send(response, 405, plain, '');
  if (token === undefined && !isAddressedHere(request)) return send(response, 421, plain, '');
  if (token !== undefined && !holdsToken(request, token))
    return send(response, 401, plain, `${monitorWords.refused401}\n`);
  const [path] = (request.url ?? '').split('?');
  if (path === '/healthz') {
    const health = await monitored.health();
    return send(response, health.ready ? 200 : 503, 'application/json', `${JSON.stringify(health)}\n`);
  }
  if (path === '/metrics')
    return send(response, 200, 'text/plain; version=0.0.4; charset=utf-8', monitored.metrics());
  send(response, 404, plain, `${monitorWords.notFound}\n`);
};

/** Serves `/healthz` and `/metrics`, on a port of their own, so that no proxy before the room passes them on. */
export const startMonitor = async (
  settings: MonitorSettings,
  monitored: Monitored,
): Promise<RunningMonitor> => {
  const server = createServer(
    { headersTimeout: 5_000, requestTimeout: 5_000, maxHeaderSize: 8_192 },
    (request, response) => {
      answer(request, response, settings, monitored).catch(() => {
        if (!response.headersSent) response.writeHead(500);
        response.end();
      });
    },
  );
  server.maxConnections = mostConnections;
  // Whoever connects and says nothing holds a place no longer than this.
  server.setTimeout(5_000);
  const port = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.listen(settings.port, settings.bind, () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : settings.port);
    });
  });
  const name = settings.bind.includes(':') ? `[${settings.bind}]` : settings.bind;
  return {
    url: `http://${name}:${port}`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
