import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatReady, isReadyAt } from '../../studio/resist/coatReady.ts';
import type { Instant } from '../../studio/ids.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

export const coatData = (coat: ResistCoat, studio: Studio, now: Instant) => {
  const ready = coatReady(coat, studio);
  return {
    id: coat.id,
    kind: coat.resist,
    pieces: coat.pieces,
    onAt: isoInstant(coat.onAt),
    readyAt: ready === 'never' ? null : isoInstant(ready.readyAt),
    ready: isReadyAt(ready, now),
    ...(coat.plannedFor !== undefined && { plannedFor: isoInstant(coat.plannedFor) }),
    layer: coat.below.length + 1,
  };
};
