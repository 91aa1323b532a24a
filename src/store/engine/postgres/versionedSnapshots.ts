import type { StudioId } from '../../../studio/ids.ts';
import { LastUsed, type Snapshot, type SnapshotCache } from '../snapshotCache.ts';

/**
 * What studios' entries fold to, remembered with the version of the studio that it is true for. Another process that
 * writes to a studio raises its version, and so makes what is remembered here stale.
 */
export class VersionedSnapshots extends LastUsed<StudioId, { version: number; snapshot: Snapshot }> {
  /** What a turn knows of a studio at this version. Only the turn itself changes it. */
  at(studio: StudioId, version: number): SnapshotCache {
    const remembered = this.get(studio);
    let known = remembered?.version === version ? remembered.snapshot : undefined;
    return {
      get: (asked) => (asked === studio ? known : undefined),
      set: (changed, snapshot) => {
        if (changed !== studio) return;
        known = snapshot;
        if ((this.get(studio)?.version ?? version) <= version) this.set(studio, { version, snapshot });
      },
    };
  }
}
