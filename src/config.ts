import { config as readDotenv } from 'dotenv';
import { z } from 'zod';

const blankAsAbsent = (value: unknown) => (value === '' ? undefined : value);
const optional = <T extends z.ZodType>(schema: T) => z.preprocess(blankAsAbsent, schema.optional());

const schema = z.object({
  DISCORD_TOKEN: optional(z.string().min(20)),
  DISCORD_GUILD: optional(z.string().regex(/^\d{15,20}$/)),
  /** Another address of the platform, for trying it out against a stand-in. */
  DISCORD_API: optional(z.url()),
  DATABASE_FILE: optional(z.string().min(1)),
  LOG_LEVEL: z.preprocess(
    blankAsAbsent,
    z.enum(['debug', 'info', 'warn', 'error', 'silent']).default('info'),
  ),
});

/** The settings of a deployment, as .env.example lists them. */
export type Config = z.infer<typeof schema>;

export class ConfigProblem extends Error {
  override readonly name = 'ConfigProblem';
}

/** The only reader of the environment. A value that is wrong is named, never guessed around. */
export const readConfig = (environment: Record<string, string | undefined> = process.env): Config => {
  if (environment === process.env) readDotenv({ quiet: true });
  const read = schema.safeParse(environment);
  if (read.success) return read.data;
  const problems = read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
  throw new ConfigProblem(problems.join('; '));
};
