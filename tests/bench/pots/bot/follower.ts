import type { Hands } from '../people/hands.ts';
import type { Entered, Phone } from './phone.ts';
import type { Reader } from './reader.ts';

/** After so many steps somebody gives up. */
const patience = 16;
/** What a drop of deflocculant in the jar is in the pail, in rungs undone and in ml (common practice). */
const drops = { rungs: 0.7, ml: 3 };
/** More drops than that nobody puts into a jar (common practice). */
const mostDrops = 3;
/** Minutes until a dose shows (common practice). */
const dosesWorkIn = 10;
/** Glaze ladled out at a time to make room, as a part of the pail (common practice). */
const ladled = 0.2;
/** ml that a gram of powder takes up (common practice). */
const powderTakes = 1 / 2.6;

type Amount = 'waterMl' | 'drawOffMl' | 'dryGrams' | 'doseMl';

/** A member at a bucket who does what the bot says, to the letter, with a keeper at hand. */
export class Follower {
  readonly #hands: Hands;
  readonly #phone: Phone;
  readonly #reader: Reader;
  /** What was said to come next, when somebody has logged nothing since. */
  #told: string | undefined;
  #isUnstirred = false;
  #isDosed = false;

  constructor(hands: Hands, phone: Phone, reader: Reader) {
    this.#hands = hands;
    this.#phone = phone;
    this.#reader = reader;
  }

  /** Whether it ends with a dip. */
  async follow(): Promise<boolean> {
    await this.#phone.ask(this.#hands.visit.bucket);
    for (let steps = 0; steps < patience; steps += 1) {
      const isTold = this.#told !== undefined;
      const step = this.#told ?? this.#phone.verdict?.step;
      this.#told = undefined;
      if (step === 'use') {
        if (this.#isUnstirred && !this.#hands.isMixed) this.#hands.stir('usual');
        return true;
      }
      if (!(await this.#take(step, isTold))) return false;
    }
    return false;
  }

  /** Does a step; false when there is nothing that anybody here can do now. */
  async #take(step: string | undefined, isTold: boolean): Promise<boolean> {
    switch (step) {
      case 'stir':
        return this.#stir('usual');
      case 'stir-on':
        return this.#stir('on');
      case 'sieve':
        this.#hands.sieve();
        await this.#log('sieved');
        return true;
      case 'measure':
        if (this.#isDosed) this.#letItWork();
        await this.#reader.measure(isTold);
        return true;
      case 'add-water':
        return this.#put('water', 'waterMl', (ml) => this.#hands.water(ml));
      case 'draw-off-water':
      case 'add-dry':
        return this.#amount('dryGrams') > 0
          ? this.#put('dry', 'dryGrams', (grams) => this.#hands.powder(grams))
          : this.#put('draw-off', 'drawOffMl', (ml) => this.#hands.water(-ml));
      case 'flocculate':
        this.#isDosed = true;
        return this.#put('flocculant', 'doseMl', (ml) => this.#hands.dose(ml));
      case 'deflocculate':
        return this.#loosen(this.#phone.verdict?.jarDrops ?? 1);
      case 'ask-keeper':
        if (this.#phone.role === 'keeper') return false;
        this.#phone.role = 'keeper';
        await this.#phone.ask(this.#hands.visit.bucket);
        return true;
      default:
        return false;
    }
  }

  /** A dose is stirred in and waited for. */
  #letItWork(): void {
    this.#isDosed = false;
    if (!this.#hands.isMixed) this.#hands.stir('usual');
    this.#hands.wait(dosesWorkIn);
  }

  async #stir(how: 'usual' | 'on'): Promise<boolean> {
    const said = this.#phone.verdict?.then;
    this.#hands.stir(how);
    const isLookAsked = this.#phone.offered('/stirred', 'look:') !== undefined;
    const holds = isLookAsked ? `look:${this.#hands.look()}` : '';
    // Who needs an amount after it logs it after all.
    if (this.#hands.forgets('stir') && (said === 'use' || said === 'measure')) this.#told = said;
    else await this.#log('stirred', [], holds);
    return true;
  }

  /** How full it is, the bot wants to know before anything goes in. */
  #isLevelAsked(): boolean {
    return this.#phone.verdict?.asks?.includes('level') === true;
  }

  /** What the bot says to take of it; for each litre, by a volume judged by eye, where it says so. */
  #amount(name: Amount): number {
    const { verdict } = this.#phone;
    const perLitre = verdict?.[`${name}PerLitre`];
    return verdict?.[name] ?? (perLitre === undefined ? 0 : (perLitre * this.#hands.volumeByEye()) / 1000);
  }

  async #put(what: string, name: Amount, act: (amount: number) => void): Promise<boolean> {
    if (this.#isLevelAsked()) {
      await this.#reader.level();
      return true;
    }
    const amount = this.#amount(name);
    const takesUp = { waterMl: amount, dryGrams: amount * powderTakes, drawOffMl: 0, doseMl: 0 }[name];
    const isFull = this.#phone.offered('/added', 'what:taken') !== undefined;
    if (takesUp > this.#hands.headroom || (amount <= 0 && isFull)) return this.#makeRoom();
    if (amount <= 0) return false;
    act(amount);
    const unit = name === 'dryGrams' ? 'g' : 'ml';
    return this.#logAddition(what, `${amount.toFixed(amount < 10 ? 1 : 0)}${unit}`);
  }

  async #loosen(jarDrops: number): Promise<boolean> {
    if (this.#isLevelAsked()) {
      await this.#reader.level();
      return true;
    }
    const found = this.#tryInJar(jarDrops);
    if (found === undefined) {
      await this.#reader.measure(true);
      return true;
    }
    this.#hands.doseRungs(-drops.rungs * found);
    const each = (this.#phone.verdict?.deflocculantMl ?? drops.ml * jarDrops) / jarDrops;
    const amount = `${Number((each * found).toFixed(1))}ml`;
    return this.#logAddition('deflocculant', amount, `amount:${amount}`);
  }

  /** The drops that make it run right in a jar: those that were said, one more where it stays thick, fewer where it is thin. */
  #tryInJar(jarDrops: number): number | undefined {
    const look = (count: number) =>
      this.#hands.lookInJar(drops.rungs * count, this.#phone.verdict?.jarWarm === true);
    const first = look(jarDrops);
    if (first === 'right') return jarDrops;
    if (first === 'thick')
      return jarDrops < mostDrops && look(jarDrops + 1) !== 'thin' ? jarDrops + 1 : jarDrops;
    for (let fewer = jarDrops - 1; fewer > 0; fewer -= 1) if (look(fewer) !== 'thin') return fewer;
    return undefined;
  }

  /** Glaze goes out first, and the bot is asked anew. */
  async #makeRoom(): Promise<boolean> {
    const { bucket } = this.#hands.visit;
    const ml = ladled * this.#hands.volumeByEye();
    this.#hands.ladle(ml);
    const litres = `${(ml / 1000).toFixed(1)}l`;
    await this.#phone.fillIn('added', bucket, [
      { option: 'what', text: 'taken' },
      { option: 'amount', text: litres, typed: litres },
    ]);
    await this.#phone.ask(bucket);
    return true;
  }

  async #logAddition(what: string, amount: string, holds = `what:${what} `): Promise<boolean> {
    this.#isUnstirred = true;
    const said = this.#phone.verdict?.then;
    if (this.#hands.forgets('addition')) this.#told = said === 'use' ? said : 'measure';
    else {
      const entered = [
        { option: 'what', text: what },
        { option: 'amount', text: amount, typed: amount },
      ];
      await this.#log('added', entered, holds);
    }
    return true;
  }

  /** By the press that holds this where one is offered; else by what is typed. */
  async #log(command: string, entered: readonly Entered[] = [], holds = ''): Promise<void> {
    const { bucket } = this.#hands.visit;
    const offered = this.#phone.offered(`/${command}`, holds);
    if (offered?.press === 'run') await this.#phone.press(offered);
    if (offered?.press !== 'run' || !this.#phone.isAnswered)
      await this.#phone.fillIn(command, bucket, entered);
    if (!this.#phone.isAnswered) await this.#phone.ask(bucket);
  }
}
