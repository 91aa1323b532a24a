import * as z from 'zod';
import type { Context } from 'hono';

/** The request's body, if it is one of these. */
export const readJson = async <T>(c: Context, body: z.ZodType<T>): Promise<T | undefined> => {
  const json: unknown = await c.req.json().catch(() => undefined);
  return body.safeParse(json).data;
};

/** Anything but true is false. */
export const isTrue = z.boolean().catch(false);

/** A text that may be left out; one that is too long counts as left out. */
export const optionalText = (most: number) => z.string().max(most).optional().catch(undefined);
