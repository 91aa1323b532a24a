/** Why there is no connection to Discord, for whoever runs the bot. */
export class DiscordProblem extends Error {
  override readonly name = 'DiscordProblem';
  readonly kind: 'token' | 'unreachable' | 'ended';

  constructor(kind: DiscordProblem['kind'], { code, cause }: { code?: number; cause?: unknown } = {}) {
    super(`Discord: ${kind}${code === undefined ? '' : ` (${code})`}`, { cause });
    this.kind = kind;
  }
}
