import type { RoomContext } from './room.ts';

export type Body = Record<string, unknown>;

/** The body as an object; undefined when it is anything else. */
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

/** A text of a body, when it is one and no longer than that. */
export const textIn = (body: Body, name: string, most: number): string | undefined => {
  const value = body[name];
  return typeof value === 'string' && value.length <= most ? value : undefined;
};
