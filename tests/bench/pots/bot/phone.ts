import type { Action, Reply } from '../../../../src/contract/contract.ts';
import type { Role } from '../../../../src/studio/ids.ts';
import type { Hands } from '../people/hands.ts';
import type { Score } from '../people/score.ts';
import { verdictSaid, type VerdictSaid } from './verdictSaid.ts';

/** One option of a line as a form takes it: typed, or picked with one press. */
export interface Entered {
  option: string;
  text: string;
  typed?: string;
}

/** Who answers a line. */
export interface Bot {
  say(line: string, person: number, role: Role): Promise<Reply>;
}

/** A phone in somebody's hand at a bucket: what is pressed and typed on it, and what it says. */
export class Phone {
  readonly #bot: Bot;
  readonly #score: Score;
  readonly #hands: Hands;
  role: Role = 'member';
  #reply: Reply | undefined;
  verdict: VerdictSaid | undefined;

  constructor(bot: Bot, score: Score, hands: Hands) {
    this.#bot = bot;
    this.#score = score;
    this.#hands = hands;
  }

  get isAnswered(): boolean {
    return this.#reply?.kind === 'answer';
  }

  /** The press that logs this, if one is offered. */
  offered(begins: string, holds = ''): Action | undefined {
    return this.#reply?.actions?.find(({ line }) => line.startsWith(begins) && line.includes(holds));
  }

  async press(action: Action): Promise<void> {
    this.#score.presses += 1;
    await this.#say(action.line);
  }

  /** Opens a bucket's page. */
  async ask(bucket: number): Promise<void> {
    this.#score.presses += 1;
    await this.#say(`/water-or-stir bucket:${bucket + 1}`);
  }

  /** Fills in the form behind a button, or types the line where there is none, and sends it. */
  async fillIn(command: string, bucket: number, entered: readonly Entered[]): Promise<void> {
    const line = [
      `/${command} bucket:${bucket + 1}`,
      ...entered.map(({ option, text }) => `${option}:${text}`),
    ].join(' ');
    if (this.offered(`/${command}`)?.press === 'edit') {
      for (const { typed } of entered)
        if (typed === undefined) this.#score.presses += 1;
        else this.#score.characters += typed.length;
      this.#score.presses += 2;
    } else {
      this.#score.characters += line.length;
      this.#score.presses += 1;
    }
    await this.#say(line);
  }

  async #say(line: string): Promise<void> {
    const { visit, pail, now } = this.#hands;
    const reply = await this.#bot.say(line, visit.person + 1, this.role);
    this.#reply = reply;
    const said = verdictSaid(reply);
    if (said) this.verdict = said;
    const chance = said?.sure?.both;
    if (typeof chance === 'number' && reply.data['bucket'] === visit.bucket + 1)
      this.#score.said.push({ chance, true: pail.gravityIsRight() && pail.flowIsRight(now) });
    const [first] = reply.actions ?? [];
    if (reply.kind === 'choice' && first?.press === 'run') await this.press(first);
  }
}
