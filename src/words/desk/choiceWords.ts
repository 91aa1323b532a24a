import type { CoatEnd } from '../../studio/resist/coatEvent.ts';
import type { CorrectionWay } from '../../studio/batch/correctBucket.ts';
import type { Resist } from '../../studio/resist/overnight.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { GravityScale } from '../../studio/measure/stateGravity.ts';

const units: Record<UnitSystem, string> = {
  metric: 'metric (g, ml, °C)',
  us: 'US (oz, cups, °F)',
  imperial: 'imperial (oz, cups, °C)',
};

type Moved = 'water' | 'dry' | 'flocculant' | 'deflocculant' | 'glaze' | 'other' | 'draw-off' | 'taken';

const moved: Record<Moved, string> = {
  water: 'water',
  dry: 'dry batch (powder)',
  flocculant: 'flocculant (Epsom salt)',
  deflocculant: 'deflocculant',
  glaze: 'glaze',
  other: 'something else',
  'draw-off': 'clear water, drawn off',
  taken: 'glaze, taken out',
};

const scale: Record<GravityScale, string> = {
  sg: 'specific gravity',
  baume: '°Baumé',
  'baume-144': '°Baumé, older (144.3)',
  hydrometer: 'gravity, read off a hydrometer',
  twaddell: '°Twaddell',
};

const resist: Record<Resist, string> = {
  wax: 'wax emulsion',
  latex: 'latex',
  'hot-wax': 'melted wax',
  tape: 'tape',
};

const way: Record<CorrectionWay, string> = {
  water: 'water in',
  'draw-off': 'clear water off',
  evaporate: 'lid off, let water evaporate',
  dry: 'dry batch in',
  blend: 'another bucket in',
};

const coatEnd: Record<CoatEnd, string> = {
  glazed: 'glazed over',
  peeled: 'peeled off',
  washed: 'washed off',
};

const weighed: Record<'with-cup' | 'without-cup', string> = {
  'with-cup': 'with the cup',
  'without-cup': 'without the cup',
};

/** What is to choose from, in words that somebody who is new can tell apart. */
export const choiceWords = { coatEnd, moved, resist, scale, units, way, weighed };
