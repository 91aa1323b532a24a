import type { MemberId, RoomPorts } from '../ports.ts';

/** What members are called now; asked of the studio only when somebody new speaks, or was renamed here. */
export class Names {
  readonly #people: RoomPorts['people'];
  readonly #someone: string;
  #known = new Map<MemberId, string>();

  constructor({ people, words }: Pick<RoomPorts, 'people' | 'words'>) {
    this.#people = people;
    this.#someone = words.someone;
  }

  async of(member: MemberId): Promise<string> {
    const known = this.#known.get(member);
    if (known !== undefined) return known;
    await this.refresh();
    return this.#known.get(member) ?? this.#someone;
  }

  async refresh(): Promise<void> {
    const before = this.#known;
    const fresh = new Map((await this.#people.all()).map(({ id, name }) => [id, name]));
    // Forgotten meanwhile, they may be in what was just read.
    if (before === this.#known) this.#known = fresh;
  }

  /** Whoever is asked for next is looked up anew. */
  forget(): void {
    this.#known = new Map();
  }
}
