import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WirePart, WireText } from '../wire.ts';
import { serverNow } from './clock.ts';
import { h } from './dom.ts';

const formats = (timeZone?: string) => ({
  clock: new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit', timeZone }),
  day: new Intl.DateTimeFormat(undefined, { weekday: 'short', day: 'numeric', month: 'short', timeZone }),
  full: new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeStyle: 'short', timeZone }),
});
let inZone = formats();

/** From now on times are shown in this zone, which is the one that they are read in. */
export const setZone = (zone: string): void => {
  inZone = formats(zone);
};

/** Whether this phone's own clock shows another time than the studio's. */
export const clockDiffers = (): boolean => {
  const now = serverNow();
  return formats().full.format(now) !== inZone.full.format(now);
};

const span = (minutes: number): string => {
  const { time } = words;
  if (minutes < 100) return time.minutes(Math.round(minutes));
  if (minutes < 48 * 60) return time.hours(Math.round(minutes / 60));
  return time.days(Math.round(minutes / 60 / 24));
};

export const agoText = (at: number, now = serverNow()): string => {
  const minutes = (now - at) / 60_000;
  if (Math.abs(minutes) < 1) return words.time.now;
  return minutes > 0 ? words.time.ago(span(minutes)) : words.time.ahead(span(-minutes));
};

export const clockText = (at: number): string => inZone.clock.format(at);

const shown = (at: number, show: 'ago' | 'clock' | 'day'): string =>
  show === 'ago' ? agoText(at) : show === 'clock' ? inZone.clock.format(at) : inZone.day.format(at);

const time = (at: number, show: 'ago' | 'clock' | 'day'): HTMLElement =>
  h('time', { title: inZone.full.format(at), 'data-at': at, 'data-show': show }, shown(at, show));

const part = (one: WirePart): Node | string => {
  if (typeof one === 'string') return one;
  if ('at' in one) return time(one.at, one.show);
  return h('bdi', {}, 'said' in one ? one.said : one.name);
};

/** Text as nodes: what somebody typed stands apart and can neither turn nor mark up what is around it. */
export const nodes = (text: WireText): (Node | string)[] => text.map(part);

export const stamp = (at: number): HTMLElement =>
  time(at, serverNow() - at > 20 * 3_600_000 ? 'day' : 'clock');

/** Times that tell how long ago grow older while they are looked at. */
export const keepTimesFresh = (): void => {
  setInterval(() => {
    for (const element of document.querySelectorAll<HTMLElement>('time[data-show=ago]'))
      element.textContent = agoText(Number(element.dataset['at']));
  }, 20_000);
};
