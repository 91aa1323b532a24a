import type { Hands, Measured } from '../people/hands.ts';
import type { RoomSettings } from '../physics/settings.ts';
import type { Entered, Phone } from './phone.ts';

const wants = ['look', 'seconds', 'weight', 'level'] as const;
type Wanted = (typeof wants)[number];

/** Reads at a bucket what the bot asks for, and types it in. */
export class Reader {
  readonly #hands: Hands;
  readonly #phone: Phone;
  readonly #settings: RoomSettings;
  #hasRead = false;

  constructor(hands: Hands, phone: Phone, settings: RoomSettings) {
    this.#hands = hands;
    this.#phone = phone;
    this.#settings = settings;
  }

  /**
   * What comes first; of a bot that does not say what it wants, the seconds, and the weight unless only flow is open. How full
   * a pail was before something went in is asked for no more.
   */
  async measure(isAfterwards = false): Promise<void> {
    const { verdict } = this.#phone;
    const asked = (verdict?.asks ?? [])
      .filter((one) => !isAfterwards || one !== 'level')
      .flatMap((one) => wants.find((wanted) => wanted === one) ?? []);
    const unsaid: Wanted[] = verdict?.rule === 'grid' ? ['seconds'] : ['weight', 'seconds'];
    const wanted = asked.length > 0 ? asked : unsaid;
    if (wanted[0] === 'level') return this.level();
    if (!this.#hands.isMixed) this.#hands.stir('usual');
    if (wanted[0] === 'look') return this.#look();
    return this.#read(wanted.includes('weight'), wanted.includes('seconds'));
  }

  /** How full the pail is, by eye. */
  async level(): Promise<void> {
    this.#hands.spend('glance');
    const text = `${(this.#hands.volumeByEye() / 1000).toFixed(0)}l`;
    await this.#phone.fillIn('reading', this.#hands.visit.bucket, [{ option: 'level', text, typed: text }]);
  }

  async #look(): Promise<void> {
    const look = this.#hands.look();
    const offered = this.#phone.offered('/', `look:${look}`);
    if (offered?.press === 'run') return this.#phone.press(offered);
    return this.#phone.fillIn('reading', this.#hands.visit.bucket, [
      { option: 'look', text: look },
      { option: 'stirred', text: 'yes' },
    ]);
  }

  async #read(weight: boolean, seconds: boolean): Promise<void> {
    const hands = this.#hands;
    // Whoever is asked again reads with what the windows were set with.
    if (this.#hasRead) hands.fetchKit();
    this.#hasRead = true;
    const both = weight && seconds ? hands.weighAndTime() : undefined;
    const weighed = both?.weighed ?? (weight ? hands.weigh() : undefined);
    const timed = both?.timed ?? (seconds ? hands.time() : undefined);
    const { bucket } = hands.visit;
    const written = weighed?.astray ?? timed?.astray ?? bucket;
    await this.#phone.fillIn('reading', written, this.#entered(weighed, timed));
    if (this.#phone.isAnswered) return;
    // What cannot be is refused, and read once more.
    const again = this.#entered(weighed && hands.weigh(), timed && hands.time());
    await this.#phone.fillIn('reading', bucket, again);
    if (!this.#phone.isAnswered) await this.#phone.ask(bucket);
  }

  #entered(weighed: Measured | undefined, timed: Measured | undefined): Entered[] {
    const { kits, celsius } = this.#settings;
    const { weighingCup, flowCup } = this.#hands.kit;
    const warmth = this.#hands.celsius.toFixed(0);
    // Only in a cold room does anybody look at the thermometer.
    const isCold = celsius[0] < 15;
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
