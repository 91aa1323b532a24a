import type { MemberId, RoomPorts } from './ports.ts';

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
    if (!this.#known.has(member)) await this.refresh();
    return this.#known.get(member) ?? this.#someone;
  }

  async refresh(): Promise<void> {
    this.#known = new Map((await this.#people.all()).map(({ id, name }) => [id, name]));
  }
}
