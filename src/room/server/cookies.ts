import { getCookie, setCookie } from 'hono/cookie';
import type { CookieOptions } from 'hono/utils/cookie';
import type { RoomContext } from './room.ts';

/** Browsers take the `__Host-` prefix as a promise that no other name or path can have set it, and only over https. */
const named = (name: string, secure: boolean) => (secure ? `__Host-${name}` : name);

export const readRoomCookie = (c: RoomContext, name: string, secure: boolean): string | undefined =>
  getCookie(c, named(name, secure));

export const writeRoomCookie = (c: RoomContext, name: string, value: string, seconds: number): void => {
  const secure = c.get('secure');
  const options: CookieOptions = { httpOnly: true, sameSite: 'Lax', path: '/', maxAge: seconds, secure };
  setCookie(c, named(name, secure), value, options);
};
