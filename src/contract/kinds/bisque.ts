import { definedOnly } from '../../definedOnly.ts';
import type { Bisque } from '../../studio/piece/bisque.ts';
import type { Kind } from '../contract.ts';
import { pick } from './picks.ts';

/** A pyrometric cone, `06` or `^6`. Cones with a leading 0 count below zero. */
export const cone: Kind<number> = {
  control: 'text',
  example: '06',
  read(typed, { words }) {
    const [, zero, digits = ''] = /^\s*(?:cone|c|\^|△|∆)?\s*(0?)(\d{1,2})\s*$/i.exec(typed) ?? [];
    const value = Number(digits);
    if (digits === '' || value < 1 || value > 42 || (zero === '0' && value > 22))
      return { ok: false, why: words.prep.notACone(typed) };
    return { ok: true, value: zero === '0' ? -value : value };
  },
};

const hardness = pick(['soft', 'normal', 'hard'], {
  'soft-fired': 'soft',
  low: 'soft',
  usual: 'normal',
  medium: 'normal',
  tight: 'hard',
  'hard-fired': 'hard',
  high: 'hard',
});
const bisqueOfHardness: Record<'soft' | 'normal' | 'hard', Bisque> = {
  soft: 'soft',
  normal: 'usual',
  hard: 'tight',
};

/** How hard the bisque was fired, as a word or a cone. */
export const bisque: Kind<{ bisque: Bisque } | { bisqueCone: number }> = {
  control: 'text',
  example: 'normal',
  async read(typed, asking) {
    const word = await hardness.read(typed, asking);
    if (word.ok) return { ok: true, value: { bisque: bisqueOfHardness[word.value] } };
    const fired = await cone.read(typed, asking);
    return fired.ok
      ? { ok: true, value: { bisqueCone: fired.value } }
      : { ok: false, why: asking.words.fired.notBisque(typed) };
  },
  ...definedOnly({ suggest: hardness.suggest }),
};
