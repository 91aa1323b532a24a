/** Why there is no connection to Discord at all, for whoever runs the bot. */
export class DiscordProblem extends Error {
  override readonly name = 'DiscordProblem';
  readonly kind: 'token' | 'unreachable';

  constructor(kind: DiscordProblem['kind'], cause: unknown) {
    super(`Discord: ${kind}`, { cause });
    this.kind = kind;
  }
}
