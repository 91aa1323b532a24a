import { config as readDotenv } from 'dotenv';
import { z } from 'zod';

const blankAsAbsent = (value: unknown) => (value === '' ? undefined : value);
const optional = <T extends z.ZodType>(schema: T) => z.preprocess(blankAsAbsent, schema.optional());

const schema = z.object({
  DISCORD_TOKEN: optional(z.string().min(20)),
  DISCORD_GUILD: optional(z.string().regex(/^\d{15,20}$/)),
  /** The servers that the bot serves; `off` lets none in that the file does not know already. */
  DISCORD_SERVERS: optional(
    z
      .string()
      .trim()
      .regex(/^(?:off|\d{15,20}(?:[\s,]+\d{15,20})*)$/i, 'off, or numbers of servers with commas between')
      .transform((typed): 'off' | string[] => (/^off$/i.test(typed) ? 'off' : typed.split(/[\s,]+/))),
  ),
  /** Another address of the platform, for trying it out against a stand-in. */
  DISCORD_API: optional(z.url()),
  DATABASE_FILE: optional(z.string().min(1)),
  /** The local room: on beside any platform, unless it is switched off. */
  ROOM: z.preprocess(blankAsAbsent, z.enum(['on', 'off']).default('on')),
  ROOM_BIND: z.preprocess(blankAsAbsent, z.string().default('127.0.0.1')),
  ROOM_PORT: z.preprocess(blankAsAbsent, z.coerce.number().int().min(0).max(65_535).default(8017)),
  /** The address that people open, when a proxy or a name of its own stands before the room. */
  ROOM_URL: optional(z.url({ protocol: /^https?$/ })),
  /** Which studio of the file the room belongs to, when there are several. */
  ROOM_STUDIO: optional(z.string().min(1)),
  /** On only behind a proxy that writes X-Forwarded-For itself. */
  ROOM_TRUST_PROXY: z.preprocess(blankAsAbsent, z.enum(['on', 'off']).default('off')),
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
