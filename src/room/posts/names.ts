import type { MemberId, RoomPorts } from '../ports.ts';

/** A cache of members' names. The studio is asked again only for a new or renamed member. */
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
    // Members forgotten while the query ran may be in its result.
    if (before === this.#known) this.#known = fresh;
  }

  forget(): void {
    this.#known = new Map();
  }
}
