/** Why a material's dust, water or fired ware asks for more care than plain clay. */
export type MaterialCaution =
  | 'silica dust'
  | 'barium'
  | 'boron'
  | 'cadmium'
  | 'chromium'
  | 'cobalt'
  | 'copper'
  | 'lead'
  | 'lithium'
  | 'manganese'
  | 'nickel'
  | 'vanadium'
  | 'caustic'
  | 'soluble';

/** seen: read in the named source; memory: the named source is believed to hold it. */
export type SourceMark = 'seen' | 'memory';

export type MaterialRow = readonly [
  id: string,
  aliases: string,
  gravity: number,
  low: number,
  high: number,
  source: string,
  mark: SourceMark,
  ...cautions: MaterialCaution[],
];

const crc = 'CRC Handbook of Chemistry and Physics, Physical Constants of Inorganic Compounds';
const usgs = 'USGS PHREEQC databases, mineral molar volumes';
const mineralogy = 'Handbook of Mineralogy, Mineralogical Society of America';
const potters = 'Handbook for Australian Potters; GTZ, Forming Techniques for the Self-Reliant Potter';
const singer = 'Singer & Singer, Industrial Ceramics';
const glass = 'Scholze, Glass: Nature, Structure, and Properties';
const mud = 'Calculations for Mud Engineers';
const wiki = 'Wikipedia, Petalite';

/** id · other names · solids gravity, low, high · source · mark · cautions */
export const materialTable: readonly MaterialRow[] = [
  // Feldspars and their kin
  [
    'potash-feldspar',
    'orthoclase, potassium feldspar, k feldspar',
    2.56,
    2.54,
    2.6,
    usgs,
    'seen',
    'silica dust',
  ],
  [
    'soda-feldspar',
    'albite, sodium feldspar, na feldspar, feldspar',
    2.62,
    2.59,
    2.65,
    mineralogy,
    'memory',
    'silica dust',
  ],
  ['lime-feldspar', 'anorthite, calcium feldspar', 2.75, 2.72, 2.78, mineralogy, 'memory', 'silica dust'],
  ['nepheline-syenite', 'neph sy, nepheline', 2.61, 2.55, 2.65, mineralogy, 'memory', 'silica dust'],
  [
    'cornish-stone',
    'china stone, growan stone, cornwall stone',
    2.6,
    2.54,
    2.65,
    singer,
    'memory',
    'silica dust',
  ],
  ['spodumene', 'lithium feldspar', 3.188, 3.03, 3.23, crc, 'seen', 'lithium', 'silica dust'],
  ['petalite', '', 2.4, 2.38, 2.46, wiki, 'seen', 'lithium', 'silica dust'],
  ['lepidolite', 'lithium mica', 2.84, 2.8, 2.9, mineralogy, 'memory', 'lithium', 'silica dust'],
  ['mica', 'muscovite', 2.82, 2.77, 2.88, mineralogy, 'memory', 'silica dust'],
  // Silica
  ['quartz', 'silica, flint, silica sand, sand', 2.648, 2.62, 2.66, crc, 'seen', 'silica dust'],
  ['cristobalite', '', 2.334, 2.27, 2.36, crc, 'seen', 'silica dust'],
  ['vitreous-silica', 'fused silica, silica glass', 2.196, 2.19, 2.21, crc, 'seen'],
  ['diatomite', 'diatomaceous earth', 2.2, 1.95, 2.35, mineralogy, 'memory', 'silica dust'],
  // Clays
  ['kaolin', 'china clay, kaolinite', 2.59, 2.58, 2.65, crc, 'seen', 'silica dust'],
  ['calcined-kaolin', 'metakaolin, calcined china clay', 2.6, 2.5, 2.7, singer, 'memory', 'silica dust'],
  ['ball-clay', '', 2.6, 2.5, 2.65, potters, 'seen', 'silica dust'],
  ['stoneware-clay', 'fire clay, fireclay', 2.6, 2.5, 2.7, potters, 'seen', 'silica dust'],
  [
    'red-earthenware-clay',
    'terracotta clay, red clay, earthenware clay',
    2.65,
    2.5,
    2.75,
    singer,
    'memory',
    'silica dust',
  ],
  ['slip-clay', 'fusible clay', 2.65, 2.5, 2.75, singer, 'memory', 'silica dust'],
  ['bentonite', 'montmorillonite', 2.6, 2.3, 2.75, mud, 'seen', 'silica dust'],
  ['hectorite', 'magnesium bentonite', 2.5, 2.3, 2.7, mineralogy, 'memory', 'lithium'],
  ['halloysite', '', 2.57, 2.55, 2.65, mineralogy, 'memory', 'silica dust'],
  ['pyrophyllite', '', 2.84, 2.65, 2.9, mineralogy, 'memory', 'silica dust'],
  ['grog', 'chamotte', 2.6, 2.5, 2.75, singer, 'memory', 'silica dust'],
  ['yellow-ochre', 'ochre, yellow iron oxide', 3.4, 2.8, 4.1, singer, 'memory', 'silica dust'],
  ['sienna', 'umber', 3.3, 2.8, 3.8, singer, 'memory', 'manganese', 'silica dust'],
  // Lime, magnesia, strontia, baryta
  ['whiting', 'calcium carbonate, calcite, chalk, limestone', 2.71, 2.7, 2.72, crc, 'seen'],
  ['dolomite', '', 2.865, 2.84, 2.9, usgs, 'seen'],
  ['talc', 'steatite, soapstone', 2.784, 2.6, 2.83, usgs, 'seen', 'silica dust'],
  ['wollastonite', 'calcium silicate', 2.92, 2.86, 3.09, crc, 'seen'],
  ['magnesite', 'heavy magnesium carbonate', 3.01, 2.98, 3.1, crc, 'seen'],
  [
    'magnesium-carbonate',
    'light magnesium carbonate, hydromagnesite, mag carb',
    2.3,
    2.15,
    2.35,
    crc,
    'seen',
  ],
  ['magnesia', 'magnesium oxide, periclase', 3.6, 3.55, 3.65, crc, 'seen', 'caustic'],
  ['slaked-lime', 'calcium hydroxide, hydrated lime', 2.2, 2.2, 2.26, crc, 'seen', 'caustic'],
  ['gypsum', 'plaster, calcium sulfate dihydrate', 2.32, 2.3, 2.34, crc, 'seen'],
  ['strontium-carbonate', 'strontianite', 3.785, 3.5, 3.79, crc, 'seen'],
  ['barium-carbonate', 'witherite', 4.308, 4.28, 4.43, crc, 'seen', 'barium'],
  ['barium-sulfate', 'barytes, barite, baryte', 4.49, 4.2, 4.5, crc, 'seen', 'barium'],
  ['fluorspar', 'calcium fluoride, fluorite', 3.18, 3.15, 3.2, crc, 'seen'],
  ['cryolite', 'sodium aluminium fluoride', 2.97, 2.95, 3, crc, 'seen'],
  ['bone-ash', 'calcium phosphate, tricalcium phosphate', 3.155, 3, 3.22, crc, 'seen'],
  ['wood-ash', 'mixed ash, ash', 2.6, 2.2, 2.9, singer, 'memory', 'caustic'],
  ['volcanic-ash', 'pumice', 2.4, 2.3, 2.6, singer, 'memory', 'silica dust'],
  ['basalt', 'granite dust, rock dust', 2.85, 2.6, 3.1, mineralogy, 'memory', 'silica dust'],
  // Alumina
  ['alumina-hydrate', 'aluminium hydroxide, gibbsite', 2.42, 2.38, 2.44, usgs, 'seen'],
  ['calcined-alumina', 'alumina, corundum, aluminium oxide', 3.99, 3.6, 4.02, crc, 'seen'],
  ['kyanite', '', 3.68, 3.53, 3.69, crc, 'seen', 'silica dust'],
  ['mullite', '', 3.17, 3.1, 3.2, crc, 'seen'],
  // Boron, soda and frits
  ['colemanite', '', 2.42, 2.4, 2.43, crc, 'seen', 'boron'],
  ['ulexite', '', 1.955, 1.95, 1.97, mineralogy, 'memory', 'boron'],
  [
    'calcium-borate',
    'natural calcium borate, colemanite and ulexite',
    2.35,
    1.96,
    2.45,
    mineralogy,
    'memory',
    'boron',
  ],
  ['borax', 'sodium borate, sodium tetraborate', 1.73, 1.7, 1.75, crc, 'seen', 'boron', 'soluble'],
  ['boric-acid', '', 1.5, 1.43, 1.52, crc, 'seen', 'boron', 'soluble'],
  ['soda-ash', 'sodium carbonate', 2.54, 2.5, 2.55, crc, 'seen', 'caustic', 'soluble'],
  ['pearl-ash', 'potassium carbonate, potash', 2.29, 2.29, 2.43, crc, 'seen', 'caustic', 'soluble'],
  ['lithium-carbonate', '', 2.11, 2.09, 2.12, crc, 'seen', 'lithium', 'caustic', 'soluble'],
  ['calcium-borosilicate-frit', 'boron frit, calcium borate frit', 2.6, 2.4, 2.75, glass, 'memory', 'boron'],
  [
    'soda-borosilicate-frit',
    'borax frit, low expansion frit, frit',
    2.5,
    2.3,
    2.65,
    glass,
    'memory',
    'boron',
  ],
  ['alkaline-frit', 'soda frit, high alkali frit', 2.5, 2.4, 2.6, glass, 'memory'],
  ['zinc-borosilicate-frit', 'zinc frit', 2.8, 2.6, 3.1, glass, 'memory', 'boron'],
  ['strontium-frit', '', 2.9, 2.6, 3.1, glass, 'memory', 'boron'],
  ['barium-frit', '', 3, 2.7, 3.4, glass, 'memory', 'barium', 'boron'],
  ['lead-bisilicate-frit', 'lead frit, lead bisilicate', 4.7, 4.5, 5, glass, 'memory', 'lead'],
  ['soda-lime-glass', 'cullet, ground glass', 2.5, 2.44, 2.55, glass, 'memory'],
  // Opacifiers
  ['zircon', 'zirconium silicate, zirconium opacifier', 4.6, 4.56, 4.72, crc, 'seen'],
  ['zirconia', 'zirconium oxide', 5.68, 5.6, 5.9, crc, 'seen'],
  ['tin-oxide', 'cassiterite, stannic oxide', 6.85, 6.8, 7, crc, 'seen'],
  ['titanium-dioxide', 'anatase, titania', 3.9, 3.8, 4.25, crc, 'seen'],
  ['rutile', 'light rutile, dark rutile', 4.17, 4.15, 4.3, crc, 'seen'],
  ['zinc-oxide', 'zincite', 5.6, 5.55, 5.68, crc, 'seen'],
  ['cerium-oxide', 'ceria', 7.216, 7.1, 7.25, crc, 'seen'],
  // Colourants
  ['red-iron-oxide', 'iron oxide, hematite, ferric oxide, rio', 5.25, 5.1, 5.28, crc, 'seen'],
  ['black-iron-oxide', 'magnetite', 5.17, 5.1, 5.2, crc, 'seen'],
  ['crocus-martis', 'natural iron oxide', 4.2, 3.4, 5, singer, 'memory', 'silica dust'],
  ['ilmenite', 'iron titanate', 4.72, 4.5, 5, crc, 'seen'],
  ['copper-oxide', 'black copper oxide, cupric oxide', 6.31, 6.3, 6.52, crc, 'seen', 'copper'],
  ['red-copper-oxide', 'cuprous oxide', 6, 6, 6.15, crc, 'seen', 'copper'],
  ['copper-carbonate', 'basic copper carbonate, malachite', 4, 3.9, 4.05, crc, 'seen', 'copper'],
  ['cobalt-oxide', 'black cobalt oxide, tricobalt tetroxide', 6.11, 6.05, 6.12, crc, 'seen', 'cobalt'],
  ['cobalt-carbonate', '', 4.2, 4.1, 4.25, crc, 'seen', 'cobalt'],
  ['manganese-dioxide', 'pyrolusite', 5.08, 4.7, 5.1, crc, 'seen', 'manganese'],
  ['manganese-carbonate', 'rhodochrosite', 3.7, 3.12, 3.71, crc, 'seen', 'manganese'],
  ['chrome-oxide', 'chromium oxide, green chrome oxide', 5.22, 5.2, 5.25, crc, 'seen', 'chromium'],
  ['iron-chromate', 'chromite', 5, 4.5, 5.1, crc, 'seen', 'chromium'],
  ['nickel-oxide', 'green nickel oxide', 6.72, 6.6, 6.82, crc, 'seen', 'nickel'],
  ['nickel-carbonate', '', 4.389, 4.36, 4.39, crc, 'seen', 'nickel'],
  ['vanadium-pentoxide', 'vanadium oxide', 3.35, 3.33, 3.36, crc, 'seen', 'vanadium'],
  ['silicon-carbide', '', 3.16, 3.15, 3.22, crc, 'seen'],
  ['red-lead', 'lead oxide, minium', 8.92, 8.3, 9.2, crc, 'seen', 'lead'],
  // What keeps a bucket up or makes it run
  ['epsom-salt', 'magnesium sulfate, epsomite, magnesium sulphate', 1.67, 1.67, 1.68, crc, 'seen', 'soluble'],
  ['sodium-silicate', 'sodium metasilicate, water glass', 2.61, 2.4, 2.62, crc, 'seen', 'caustic', 'soluble'],
];
