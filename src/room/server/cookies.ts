import { getCookie, setCookie } from 'hono/cookie';
import type { CookieOptions } from 'hono/utils/cookie';
import type { RoomContext } from './room.ts';

/** With the `__Host-` prefix, browsers refuse a cookie from another domain or path, or without https. */
const cookieName = (name: string, secure: boolean) => (secure ? `__Host-${name}` : name);

export const readRoomCookie = (c: RoomContext, name: string, secure: boolean): string | undefined =>
  getCookie(c, cookieName(name, secure));

export const writeRoomCookie = (c: RoomContext, name: string, value: string, seconds: number): void => {
  const secure = c.get('secure');
  const options: CookieOptions = { httpOnly: true, sameSite: 'Lax', path: '/', maxAge: seconds, secure };
  setCookie(c, cookieName(name, secure), value, options);
};
