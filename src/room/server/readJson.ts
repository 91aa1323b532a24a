import type { RoomContext } from './room.ts';

export type Body = Record<string, unknown>;

/** The request body as an object; undefined if it is anything else. */
export const readJson = async (c: RoomContext): Promise<Body | undefined> => {
  try {
    const body: unknown = await c.req.json();
    return isBody(body) ? body : undefined;
  } catch {
    return undefined;
  }
};

export const isBody = (value: unknown): value is Body =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A string from the body, if it is one and not too long. */
export const textIn = (body: Body, name: string, most: number): string | undefined => {
  const value = body[name];
  return typeof value === 'string' && value.length <= most ? value : undefined;
};
