import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { GravityScale } from '../../studio/measure/stateGravity.ts';
import { correctWords } from '../batch/correctWords.ts';
import { coatWords } from '../resist/coatWords.ts';

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

const weighed: Record<'with-cup' | 'without-cup', string> = {
  'with-cup': 'with the cup',
  'without-cup': 'without the cup',
};

/** What is to choose from, in words that somebody who is new can tell apart. */
export const choiceWords = {
  coatEnd: coatWords.end,
  moved,
  resist: coatWords.kinds,
  scale,
  units,
  way: correctWords.way,
  weighed,
};
