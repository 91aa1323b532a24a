import { mkdtempSync, rmSync } from 'node:fs';
import { request as httpRequest, type IncomingHttpHeaders, type IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import { openApp, type App } from '../../../src/start/app.ts';
import { systemClock, type Clock } from '../../../src/clock.ts';
import { speak } from '../../../src/desk/speak.ts';
import { connectRoom } from '../../../src/start/connectRoom.ts';
import type { RunningRoom } from '../../../src/room/server/startRoom.ts';
import { openDemo } from '../../../src/start/openDemo.ts';
import type { StudioId } from '../../../src/studio/ids.ts';
import { onPostgres } from '../postgres/databases.ts';
import { newLogbook } from '../store/storeFile.ts';

export interface TestRoom {
  app: App;
  room: RunningRoom;
  studio: StudioId;
  file: string;
  port: number;
  /** Text printed for the operator. */
  told: string[];
  /** Warnings in the log. */
  warned: object[];
  passcode: string;
  keeperCode: string;
  again(changed?: Wanted): Promise<TestRoom>;
  close(): Promise<void>;
}

interface Wanted {
  demo?: boolean;
  url?: string;
  trustProxy?: boolean;
  folder?: string;
  /** The logbook of another process, which is served by both. */
  file?: string;
  newKeys?: boolean;
  clock?: Clock;
  /** The test causes an error on purpose. */
  mayBreak?: boolean;
  /** Nothing can be written down either. */
  brokenLog?: boolean;
}

/** A room on its own port, over a real store in a file that is deleted afterwards. */
export const openRoom = async (wanted: Wanted = {}): Promise<TestRoom> => {
  const folder = wanted.folder ?? mkdtempSync(join(tmpdir(), 'room-'));
  const bugs: unknown[] = [];
  const onBug = (error: unknown) => void bugs.push(error);
  const fresh = async () => (onPostgres && wanted.demo !== true ? newLogbook() : join(folder, 'studio.db'));
  const options = { file: wanted.file ?? (await fresh()), clock: wanted.clock ?? systemClock, onBug };
  const app = await (wanted.demo === true ? openDemo(options) : openApp(options));
  const [first] = await app.store.people.studios();
  const studio = first?.id ?? (await app.store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op'));
  const told: string[] = [];
  const warned: object[] = [];
  const fail = (about: object) => {
    bugs.push(about);
    if (wanted.brokenLog === true) throw new Error('the log is full');
  };
  const room = await connectRoom(
    app,
    {
      ROOM_BIND: '127.0.0.1',
      ROOM_PORT: 0,
      ROOM_URL: wanted.url,
      ROOM_TRUST_PROXY: wanted.trustProxy === true ? 'on' : 'off',
    },
    {
      studio,
      open: wanted.demo === true,
      lan: false,
      newKeys: wanted.newKeys === true,
      log: {
        info: () => undefined,
        warn: (about, message) => void warned.push({ ...about, message }),
        error: fail,
      },
      tell: (text) => void told.push(text),
    },
  );
  const all = told.join('\n');
  const stop = async () => {
    await room.stop();
    await app.store.close();
  };
  return {
    app,
    room,
    studio,
    file: options.file,
    told,
    warned,
    port: room.port,
    passcode: /joining: (\S+)/.exec(all)?.[1] ?? '',
    keeperCode: /#keeper=([\w-]+)/.exec(all)?.[1] ?? '',
    again: async (changed = {}) => {
      await stop();
      return openRoom({ ...wanted, ...changed, folder, file: options.file });
    },
    close: async () => {
      await stop();
      rmSync(folder, { recursive: true, force: true });
      if (bugs.length > 0 && wanted.mayBreak !== true) throw bugs[0];
    },
  };
};

/** A room that is closed after the test. */
export const testRoom = async (wanted: Wanted = {}): Promise<TestRoom> => {
  const open = await openRoom(wanted);
  onTestFinished(() => open.close());
  return open;
};

/** Makes every entry fail, as a full or broken disk would; returns a function that repairs it. */
export const breakLog = ({ file }: TestRoom): (() => void) => {
  const run = (sql: string) => {
    const database = new Sqlite(file);
    database.exec(sql);
    database.close();
  };
  run("create trigger broken before insert on events begin select raise(abort, 'broken on purpose'); end");
  return () => run('drop trigger if exists broken');
};

/** Runs a line at the desk, as a keeper from another platform. */
export const sayAsKeeper = async ({ app, studio }: TestRoom, line: string): Promise<void> => {
  const member = await app.store.people.memberOf(studio, 'terminal', 'Warden', 'Warden');
  const speaker = { studio, member, role: 'keeper', now: app.clock.now() } as const;
  const reply = await speak(line, `terminal:${performance.now()}:${line}`, speaker, app);
  if (reply.kind !== 'answer') throw new Error(`${line}: ${JSON.stringify(reply)}`);
};

export const gullGrey =
  '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4';

export interface Got {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
  json: Record<string, unknown>;
}

const parsed = (text: string): Record<string, unknown> => {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
};

/** A phone: it keeps its cookies and sends a browser's headers, unless told otherwise. */
export class Phone {
  readonly #port: number;
  readonly #cookies = new Map<string, string>();
  host: string;
  origin: string | undefined;
  /** X-Forwarded-For, as a proxy would set it. */
  from: string | undefined;

  constructor(port: number) {
    this.#port = port;
    this.host = `127.0.0.1:${port}`;
    this.origin = `http://${this.host}`;
  }

  cookie(name: string): string | undefined {
    return this.#cookies.get(name);
  }

  forget(name: string): void {
    this.#cookies.delete(name);
  }

  setCookie(name: string, value: string): void {
    this.#cookies.set(name, value);
  }

  open(
    method: string,
    path: string,
    headers: Record<string, string> = {},
    body?: string,
  ): Promise<IncomingMessage> {
    const cookie = [...this.#cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    return new Promise((resolve, reject) => {
      const request = httpRequest(
        {
          host: '127.0.0.1',
          port: this.#port,
          method,
          path,
          headers: {
            host: this.host,
            ...(this.origin !== undefined && method !== 'GET' && { origin: this.origin }),
            ...(cookie !== '' && { cookie }),
            ...(this.from !== undefined && { 'x-forwarded-for': this.from }),
            ...headers,
          },
        },
        resolve,
      );
      request.on('error', reject);
      request.end(body);
    });
  }

  async #read(message: IncomingMessage): Promise<Got> {
    let text = '';
    for await (const chunk of message) text += String(chunk);
    for (const line of message.headers['set-cookie'] ?? []) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      if (value === '') this.#cookies.delete(name);
      else this.#cookies.set(name, value);
    }
    return { status: message.statusCode ?? 0, headers: message.headers, text, json: parsed(text) };
  }

  async get(path: string, headers: Record<string, string> = {}): Promise<Got> {
    return this.#read(await this.open('GET', path, headers));
  }

  async post(path: string, body: unknown, headers: Record<string, string> = {}): Promise<Got> {
    const text = typeof body === 'string' ? body : JSON.stringify(body);
    return this.#read(
      await this.open('POST', path, { 'content-type': 'application/json', ...headers }, text),
    );
  }

  signIn(given: Record<string, unknown>): Promise<Got> {
    return this.post('/api/sign-in', given);
  }

  say(
    line: string,
    id = `id-${Math.random().toString(36).slice(2)}-0123456789abcdef`,
    more: { waited?: unknown; sure?: boolean } = {},
  ): Promise<Got> {
    return this.post('/api/say', { id, line, ...more });
  }

  /** Opens the event stream; returns the events so far, and a way to wait for a number of them. */
  async listen(after = 0): Promise<{
    posts: Record<string, unknown>[];
    until(many: number): Promise<void>;
    message: IncomingMessage;
  }> {
    const message = await this.open('GET', `/api/stream?after=${after}`);
    const posts: Record<string, unknown>[] = [];
    let waiting: { many: number; go(): void } | undefined;
    let rest = '';
    message.on('error', () => undefined);
    message.on('data', (chunk: Buffer) => {
      rest += chunk.toString();
      const events = rest.split('\n\n');
      rest = events.pop() ?? '';
      for (const event of events) {
        const data = /^event: post\ndata: (.*)$/m.exec(event)?.[1];
        if (data !== undefined) posts.push(parsed(data));
      }
      if (waiting && posts.length >= waiting.many) waiting.go();
    });
    const until = (many: number) =>
      new Promise<void>((go) => {
        if (posts.length >= many) go();
        else waiting = { many, go };
      });
    return { posts, until, message };
  }
}

/** A phone that has signed in: with a name in the demo, otherwise with the passcode or a code. */
export const phoneOf = async (
  open: TestRoom,
  name: string,
  how: Record<string, unknown> = {},
): Promise<Phone> => {
  const phone = new Phone(open.port);
  const got = await phone.signIn({ name, secret: `${name} likes clay`, passcode: open.passcode, ...how });
  if (got.status !== 200) throw new Error(`${name}: ${got.status} ${got.text}`);
  return phone;
};
