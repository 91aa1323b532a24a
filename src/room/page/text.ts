import { agoText as agoInHours } from '../../words/text/agoText.ts';
import type { WirePart, WireText } from '../wire.ts';
import { serverNow } from './browser/clock.ts';
import { h } from './browser/dom.ts';

const formats = (timeZone?: string) => ({
  clock: new Intl.DateTimeFormat(undefined, { timeStyle: 'short', timeZone }),
  day: new Intl.DateTimeFormat(undefined, { weekday: 'short', day: 'numeric', month: 'short', timeZone }),
  full: new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeStyle: 'short', timeZone }),
});
let inZone = formats();

/** Sets the time zone for times: the studio's, since typed times are read in it. */
export const setZone = (zone: string): void => {
  inZone = formats(zone);
};

/** Whether the phone's local time differs from the studio's. */
export const clockDiffers = (): boolean => {
  const now = serverNow();
  return formats().full.format(now) !== inZone.full.format(now);
};

export const agoText = (at: number, now = serverNow()): string => agoInHours((now - at) / 3_600_000);

export const clockText = (at: number): string => inZone.clock.format(at);

const timeText = (at: number, show: 'ago' | 'clock' | 'day'): string =>
  show === 'ago' ? agoText(at) : show === 'clock' ? inZone.clock.format(at) : inZone.day.format(at);

const timeNode = (at: number, show: 'ago' | 'clock' | 'day'): HTMLElement =>
  h('time', { title: inZone.full.format(at), 'data-at': at, 'data-show': show }, timeText(at, show));

const partNode = (one: WirePart): Node | string => {
  if (typeof one === 'string') return one;
  if ('at' in one) return timeNode(one.at, one.show);
  return h('bdi', {}, 'said' in one ? one.said : one.name);
};

/**
 * Text as DOM nodes. Typed text gets its own element, so that it cannot change the direction or look of what is around
 * it.
 */
export const nodes = (text: WireText): (Node | string)[] => text.map(partNode);

/** When something was said: its age, so that an old answer is not taken for one of now. */
export const stamp = (at: number): HTMLElement => timeNode(at, 'ago');

export const keepTimesFresh = (): void => {
  setInterval(() => {
    for (const element of document.querySelectorAll<HTMLElement>('time[data-show=ago]'))
      element.textContent = agoText(Number(element.dataset['at']));
  }, 20_000);
};
