import { EventEmitter, once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { setImmediate } from 'node:timers/promises';
import type { APIMessage } from 'discord.js';
import { readBody } from './discordBody.ts';
import { DiscordGatewayDouble } from './discordGatewayDouble.ts';
import type { Draft } from './discordInteraction.ts';
import { type Answer, type Call, answer, refusal } from './discordRest.ts';
import {
  type Channel,
  type Interaction,
  type Person,
  type StoredMessage,
  type World,
  newWorld,
  nowIn,
  snowflake,
} from './discordWorld.ts';

/** A fault between the bot and Discord. */
export type Fault =
  | { refuse: Answer }
  /** The connection ends without a response. With `after`, Discord has carried out the request. */
  | { cut: 'before' | 'after'; how: 'closed' | 'reset' }
  /** No response comes, and the connection stays open. */
  | 'hang';

interface Planted {
  fault: Fault;
  fits: (call: Call) => boolean;
  left: number;
}

export const serverError: Fault = { refuse: refusal(503, 0, '503: Service Unavailable') };

export const rateLimited = (seconds: number): Fault => ({
  refuse: {
    status: 429,
    body: { message: 'You are being rate limited.', retry_after: seconds, global: false },
    headers: { 'retry-after': String(seconds), 'x-ratelimit-scope': 'user' },
  },
});

/**
 * A stand-in for Discord on loopback, used by the real client. It enforces Discord's rules and records every request.
 */
export class DiscordDouble {
  readonly token = 'a-token-for-loopback-only';
  readonly world: World = newWorld();
  readonly calls: Call[] = [];
  readonly gateway: DiscordGatewayDouble;
  /** Called for the first response to each interaction. */
  onAnswer: (interaction: Interaction) => void = () => undefined;
  readonly #server = createServer((request, response) => void this.#hear(request, response));
  readonly #planted: Planted[] = [];
  readonly #changes = new EventEmitter().setMaxListeners(0);

  /** A lean double behaves the same, but checks and records nothing, so that it does not distort measurements. */
  readonly #lean: boolean;

  private constructor(lean: boolean) {
    this.#lean = lean;
    this.world.checks = !lean;
    this.gateway = new DiscordGatewayDouble(
      this.world,
      this.token,
      () => `ws://127.0.0.1:${this.#port}`,
      () => this.#changed(),
    );
    this.#server.on('upgrade', (request, socket, head) => this.gateway.accept(request, socket, head));
  }

  static async start({ lean = false } = {}): Promise<DiscordDouble> {
    const double = new DiscordDouble(lean);
    double.#server.listen(0, '127.0.0.1');
    await once(double.#server, 'listening');
    return double;
  }

  async stop(): Promise<void> {
    this.gateway.stop();
    this.#server.closeAllConnections();
    this.#server.close();
    await once(this.#server, 'close');
  }

  get api(): string {
    return `http://127.0.0.1:${this.#port}/api`;
  }

  /** Every violation in any body so far, of Discord's rules or ours. */
  get problems(): string[] {
    return this.calls.flatMap((call) =>
      call.problems.map((problem) => `${call.method} ${call.path}: ${problem}`),
    );
  }

  person(name: string, about: Omit<Person, 'id' | 'name'> = {}): Person {
    const person = { id: snowflake(Date.now()), name, ...about };
    this.world.people.set(person.id, person);
    return person;
  }

  channel(about: Omit<Channel, 'id' | 'kind'> = {}): Channel {
    const channel: Channel = { id: snowflake(Date.now()), kind: 'server', ...about };
    this.world.channels.set(channel.id, channel);
    return channel;
  }

  /** Advances the clock of the stand-in only. */
  pass(milliseconds: number): void {
    this.world.ahead += milliseconds;
  }

  plant(fault: Fault, fits: (call: Call) => boolean, times = 1): void {
    this.#planted.push({ fault, fits, left: times });
  }

  /** Sends an interaction to the bot. */
  deliver(draft: Draft): Interaction {
    return this.hold(draft, 0);
  }

  /** Sends an interaction that was created so many milliseconds ago. */
  hold(draft: Draft, milliseconds: number): Interaction {
    const at = nowIn(this.world) - milliseconds;
    const id = snowflake(at);
    const interaction: Interaction = {
      id,
      token: `token-${id}`,
      type: draft.type,
      by: draft.by,
      channel: draft.channel,
      createdAt: at,
      message: draft.message,
      acknowledged: undefined,
      acknowledgedAt: undefined,
      original: undefined,
      waiting: false,
      followUps: [],
    };
    this.world.interactions.set(id, interaction);
    this.gateway.dispatch('INTERACTION_CREATE', draft.data(this.world, interaction));
    return interaction;
  }

  /** Sends the same interaction again, as Discord does after a resume. */
  deliverAgain(interaction: Interaction, draft: Draft): void {
    this.gateway.dispatch('INTERACTION_CREATE', draft.data(this.world, interaction));
  }

  /** Sends an interaction and waits for the bot's first response. */
  async use(draft: Draft): Promise<Interaction> {
    const interaction = this.deliver(draft);
    await this.until(() => interaction.acknowledged !== undefined, `an answer to ${draft.what}`);
    return interaction;
  }

  /** Sends an interaction and waits for its final message. */
  async reply(draft: Draft): Promise<StoredMessage & { interaction: Interaction }> {
    const interaction = await this.use(draft);
    await this.until(() => !interaction.waiting, `the reply to ${draft.what}`);
    return { ...this.message(interaction.original), interaction };
  }

  /** Accepts no connections while `work` runs. */
  async unreachable(work: () => Promise<void>): Promise<void> {
    const port = this.#port;
    this.#server.close();
    this.#server.closeAllConnections();
    this.gateway.dropSocket();
    await once(this.#server, 'close');
    // The client is in this process: it sees its kept connections end at the next turns of the loop.
    for (let turns = 0; turns < 5; turns += 1) await setImmediate();
    await work();
    this.#server.listen(port, '127.0.0.1');
    await once(this.#server, 'listening');
  }

  message(id: string | undefined): StoredMessage {
    const message = this.world.messages.get(id ?? '');
    if (!message) throw new Error(`there is no message ${String(id)}`);
    return message;
  }

  messagesIn(channel: string): APIMessage[] {
    return [...this.world.messages.values()]
      .map((one) => one.message)
      .filter((one) => one.channel_id === channel);
  }

  async until(done: () => boolean, what: string, milliseconds = 25_000): Promise<void> {
    const signal = AbortSignal.timeout(milliseconds);
    while (!done()) {
      try {
        await once(this.#changes, 'changed', { signal });
      } catch {
        throw new Error(`waited ${milliseconds} ms in vain for ${what}`);
      }
    }
  }

  get #port(): number {
    // For a TCP port, the address is never a pipe's name.
    return (this.#server.address() as AddressInfo).port;
  }

  #changed(): void {
    this.#changes.emit('changed');
  }

  async #hear(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const raw = await buffer(request);
    const url = new URL(request.url ?? '/', 'http://127.0.0.1');
    const { json, files } = await readBody(raw, request.headers['content-type'] ?? '');
    const call: Call = {
      method: request.method ?? 'GET',
      path: decodeURIComponent(url.pathname.replace(/^\/api\/v\d+/, '')),
      query: url.searchParams,
      body: json,
      files,
      at: nowIn(this.world),
      problems: [],
    };
    if (call.path === '/gateway/bot') return reply(response, this.#gatewayBot(request.headers.authorization));
    if (!this.#lean) this.calls.push(call);
    const fault = this.#fault(call);
    if (fault === 'hang') return this.#changed();
    if (fault && 'refuse' in fault) reply(response, fault.refuse);
    else {
      const result = fault?.cut === 'before' ? undefined : answer(this.world, call);
      if (fault) cut(request, fault.how);
      else if (result) reply(response, result);
    }
    const answered = call.path.startsWith('/interactions/')
      ? this.world.interactions.get(call.path.split('/')[2] ?? '')
      : undefined;
    if (answered?.acknowledged) this.onAnswer(answered);
    this.#changed();
  }

  #fault(call: Call): Fault | undefined {
    const planted = this.#planted.find((one) => one.left > 0 && one.fits(call));
    if (planted) planted.left -= 1;
    return planted?.fault;
  }

  #gatewayBot(authorization: string | undefined): Answer {
    if (authorization !== `Bot ${this.token}`) return refusal(401, 0, '401: Unauthorized');
    return {
      status: 200,
      body: {
        url: `ws://127.0.0.1:${this.#port}`,
        shards: 1,
        session_start_limit: { total: 1000, remaining: 999, reset_after: 86_400_000, max_concurrency: 1 },
      },
    };
  }
}

const reply = (response: ServerResponse, { status, body, headers }: Answer): void => {
  response.writeHead(status, {
    ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    ...headers,
  });
  response.end(body === undefined ? undefined : JSON.stringify(body));
};

const cut = (request: IncomingMessage, how: 'closed' | 'reset'): void => {
  if (how === 'reset') request.socket.resetAndDestroy();
  else request.socket.destroy();
};
