import type { Hands, Measured } from '../people/hands.ts';
import type { RoomSettings } from '../physics/settings.ts';
import type { Entered, Phone } from './phone.ts';

/** After so many steps somebody gives up. */
const patience = 16;
/** What a keeper takes of a deflocculant at a time, in rungs undone and in ml (common practice). */
const drops = { rungs: 0.7, ml: 3 };

type Wanted = 'look' | 'seconds' | 'weight' | 'level';
const isWanted = (asked: string): asked is Wanted =>
  asked === 'look' || asked === 'seconds' || asked === 'weight' || asked === 'level';

/** A member at a bucket who does what the bot says, to the letter, with a keeper at hand. */
export class Follower {
  readonly #hands: Hands;
  readonly #phone: Phone;
  readonly #settings: RoomSettings;

  constructor(hands: Hands, phone: Phone, settings: RoomSettings) {
    this.#hands = hands;
    this.#phone = phone;
    this.#settings = settings;
  }

  get #bucket(): number {
    return this.#hands.visit.bucket;
  }

  /** Whether it ends with a dip. */
  async follow(): Promise<boolean> {
    await this.#phone.ask(this.#bucket);
    let told: string | undefined;
    for (let step = 0; step < patience; step += 1) {
      const now = told ?? this.#phone.verdict?.step;
      if (now === undefined) throw new Error('a bucket was answered without a verdict');
      if (now === 'use') {
        if (this.#phone.verdict?.asks?.some(isWanted) && told === undefined) {
          await this.#measure();
          continue;
        }
        // Something went in and was not stirred.
        if (!this.#hands.isMixed && this.#changed) this.#hands.stir('usual');
        return true;
      }
      const before = told;
      told = await this.#take(now);
      if (told === 'leave') return false;
      if (!this.#phone.isAnswered && told === undefined && before === undefined)
        await this.#phone.ask(this.#bucket);
    }
    return false;
  }

  #changed = false;

  /** Does one step. Answers what was said to come after it, when nobody logged it. */
  async #take(step: string): Promise<string | undefined> {
    switch (step) {
      case 'stir':
        return this.#stir();
      case 'stir-on': {
        this.#hands.stir('on');
        return this.#logStir('minutes:');
      }
      case 'sieve': {
        this.#hands.sieve();
        await this.#log('/sieved', 'sieved', []);
        return undefined;
      }
      case 'measure':
        return this.#measure();
      case 'add-water':
        return this.#put('water', this.#amount('waterMl'), 'ml');
      case 'draw-off-water':
      case 'add-dry': {
        const dry = this.#amount('dryGrams');
        return dry > 0 ? this.#put('dry', dry, 'g') : this.#put('draw-off', this.#amount('drawOffMl'), 'ml');
      }
      case 'flocculate':
        return this.#put('flocculant', this.#amount('doseMl'), 'ml');
      case 'deflocculate':
        return this.#put('deflocculant', drops.ml, 'ml');
      case 'ask-keeper': {
        if (this.#phone.role === 'keeper') return 'leave';
        this.#phone.role = 'keeper';
        await this.#phone.ask(this.#bucket);
        return undefined;
      }
      default:
        return 'leave';
    }
  }

  async #stir(): Promise<string | undefined> {
    const said = this.#phone.verdict?.then;
    this.#hands.stir('usual');
    const asked = this.#phone.offered('/stirred', 'look:');
    return this.#logStir(asked ? `look:${this.#hands.look()}` : '', said);
  }

  /** Logs a stir, by the press that holds this where there is one, or forgets it. */
  async #logStir(holds: string, said = this.#phone.verdict?.then): Promise<string | undefined> {
    // Without a log there is no amount, and somebody who needs one logs after all.
    if (this.#hands.forgets('stir') && (said === 'use' || said === 'measure')) return said;
    await this.#log('/stirred', 'stirred', [], holds);
    return undefined;
  }

  async #log(begins: string, command: string, entered: readonly Entered[], holds = ''): Promise<void> {
    const offered = this.#phone.offered(begins, holds) ?? this.#phone.offered(begins);
    if (offered?.press === 'run') await this.#phone.press(offered);
    else await this.#phone.fillIn(command, this.#bucket, entered);
    if (!this.#phone.isAnswered) await this.#phone.fillIn(command, this.#bucket, entered);
  }

  /** What the bot says to take of it; for each litre, by a volume judged by eye, where it says so. */
  #amount(name: 'waterMl' | 'drawOffMl' | 'dryGrams' | 'doseMl'): number {
    const { verdict } = this.#phone;
    const perLitre = verdict?.[`${name}PerLitre`];
    return verdict?.[name] ?? (perLitre === undefined ? 0 : (perLitre * this.#hands.volumeByEye()) / 1000);
  }

  async #put(what: string, amount: number, unit: 'ml' | 'g'): Promise<string | undefined> {
    const hands = this.#hands;
    const said = this.#phone.verdict?.then ?? 'measure';
    if (amount <= 0) return 'leave';
    if (what === 'water') hands.water(amount);
    else if (what === 'draw-off') hands.water(-amount);
    else if (what === 'dry') hands.powder(amount);
    else if (what === 'flocculant') hands.dose(amount);
    else hands.doseRungs(-drops.rungs);
    this.#changed = true;
    if (hands.forgets('addition')) return said === 'use' || said === 'measure' ? said : 'measure';
    const text = `${unit === 'ml' && amount < 10 ? amount.toFixed(1) : amount.toFixed(0)}${unit}`;
    await this.#log(
      `/added`,
      'added',
      [
        { option: 'what', text: what },
        { option: 'amount', text, typed: text },
      ],
      `what:${what} `,
    );
    return undefined;
  }

  /** Reads what is asked for; of a bot that does not say what, the weight and the seconds. */
  async #measure(): Promise<string | undefined> {
    const { verdict } = this.#phone;
    const asked = (verdict?.asks ?? []).filter(isWanted);
    const byDefault: Wanted[] = verdict?.rule === 'grid' ? ['seconds'] : ['weight', 'seconds'];
    const wanted = asked.length > 0 ? asked : byDefault;
    if (!this.#hands.isMixed) this.#hands.stir('usual');
    if (wanted[0] === 'look') return this.#look();
    if (wanted[0] === 'level') return this.#level();
    await this.#read(wanted.includes('weight'), wanted.includes('seconds'));
    return undefined;
  }

  async #look(): Promise<undefined> {
    const look = this.#hands.look();
    const offered = this.#phone.offered('/', `look:${look}`);
    if (offered?.press === 'run') await this.#phone.press(offered);
    else
      await this.#phone.fillIn('reading', this.#bucket, [
        { option: 'look', text: look },
        { option: 'stirred', text: 'yes' },
      ]);
    return undefined;
  }

  async #level(): Promise<undefined> {
    this.#hands.spend(0.2);
    const text = `${(this.#hands.volumeByEye() / 1000).toFixed(0)}l`;
    await this.#phone.fillIn('reading', this.#bucket, [{ option: 'level', text, typed: text }]);
    return undefined;
  }

  async #read(weight: boolean, seconds: boolean): Promise<void> {
    const hands = this.#hands;
    const both = weight && seconds ? hands.weighAndTime() : undefined;
    const weighed = both?.weighed ?? (weight ? hands.weigh() : undefined);
    const timed = both?.timed ?? (seconds ? hands.time() : undefined);
    const bucket = weighed?.astray ?? timed?.astray ?? this.#bucket;
    await this.#phone.fillIn('reading', bucket, this.#entered(weighed, timed));
    if (this.#phone.isAnswered) return;
    // What cannot be is refused, and read once more.
    await this.#phone.fillIn(
      'reading',
      this.#bucket,
      this.#entered(weighed && hands.weigh(), timed && hands.time()),
    );
  }

  #entered(weighed: Measured | undefined, timed: Measured | undefined): Entered[] {
    const { kits, celsius } = this.#settings;
    const { weighingCup, flowCup } = this.#hands.kit;
    const isCold = celsius[0] < 15;
    const warmth = this.#hands.celsius.toFixed(0);
    return [
      ...(weighed ? [{ option: 'weight', text: `${weighed.typed}g`, typed: weighed.typed }] : []),
      ...(timed ? [{ option: 'seconds', text: timed.typed, typed: timed.typed }] : []),
      { option: 'stirred', text: 'yes' },
      ...(weighed && kits.length > 1 ? [{ option: 'vessel', text: `"${weighingCup}"` }] : []),
      ...(timed && kits.length > 1 ? [{ option: 'cup', text: `"${flowCup}"` }] : []),
      ...(timed && isCold ? [{ option: 'temperature', text: `${warmth}C`, typed: warmth }] : []),
    ];
  }
}
