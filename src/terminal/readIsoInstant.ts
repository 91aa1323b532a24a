import { parseISO } from 'date-fns/parseISO';
import { instant, type Instant } from '../studio/ids.ts';

/** An ISO 8601 instant with a zone, such as 2026-03-08T02:30:00Z; undefined for anything else. */
export const readIsoInstant = (text: string): Instant | undefined => {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:?\d{2})$/.test(text))
    return undefined;
  const at = parseISO(text).getTime();
  return Number.isNaN(at) ? undefined : instant(at);
};
