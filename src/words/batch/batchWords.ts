import { present } from '../../present.ts';
import type { Window } from '../../studio/settings/bucketSettings.ts';
import type { Gravity } from '../../glaze/units.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { Instant } from '../../studio/ids.ts';
import type { WeighingOrder } from '../../studio/batch/weighingOrder.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import {
  gravityText,
  gravityWithin,
  handAmount,
  massText,
  percentText,
  volumeAbout,
  volumeText,
  volumeTo,
  windowText,
} from '../text/measures.ts';
import { materialsText, recipeLine } from './recipeLine.ts';
import { said, t, type Text, saidNames } from '../text/text.ts';

const leach = 'no food ware without a laboratory’s leach test';

const materialCautions: Record<MaterialCaution, string> = {
  'silica dust': 'silica in its dust',
  barium: `barium, toxic when swallowed or breathed: gloves, fitted mask, wash hands; ${leach}`,
  boron: 'boron, harmful when swallowed or breathed: mask, wash hands',
  cadmium:
    'cadmium, poisonous: the bucket goes on hold. Don’t use it here until a keeper and a laboratory have cleared it, and never on food ware',
  chromium: `chromium: gloves, fitted mask, wash hands, vent the kiln room; ${leach}`,
  chromate:
    'a chromate, which causes cancer and burns skin: don’t open it without a keeper; gloves, fitted mask, eye protection',
  cobalt: `cobalt, which can sensitise skin and lungs: gloves, fitted mask, wash hands; ${leach}`,
  copper: `copper: mask, wash hands, vent the kiln room; ${leach}`,
  lead: 'lead, poisonous: the bucket goes on hold. Don’t use it here until a keeper and a laboratory have cleared it, and never on food ware',
  lithium: `lithium, harmful when swallowed: gloves, mask, wash hands; ${leach}`,
  manganese: `manganese, harmful as dust and as kiln fume: fitted mask, wash hands, vent the kiln room; ${leach}`,
  nickel: `nickel, which can sensitise skin and lungs: gloves, fitted mask, wash hands; ${leach}`,
  vanadium: `vanadium, toxic as dust: gloves, fitted mask, wash hands; ${leach}`,
  uranium:
    'uranium, radioactive and poisonous: the bucket goes on hold. Don’t use it here; ask the authority that your local rules name',
  arsenic: 'arsenic, poisonous also as kiln fume: the bucket goes on hold. Don’t use it here',
  asbestos:
    'may hold asbestos, whose dust causes cancer: the bucket goes on hold. Don’t use it here; keep it closed',
  fluorine: 'fluorine, which leaves the kiln as a corrosive fume: mask, and vent the kiln room',
  toxic: `toxic: gloves, fitted mask, wash hands, and read the supplier’s safety sheet first; ${leach}`,
  caustic: 'caustic: gloves and eye protection, rinse splashes at once',
  soluble: 'dissolves in water: drawn-off water carries it away, and it may come back as crystals',
};

/** Grams as a scale shows them, thousands set apart. */
const weighed = (grams: number): string => {
  const [whole = '', part] = String(Number(grams.toFixed(2))).split('.');
  const apart = whole.length > 4 ? whole.replace(/\B(?=(?:\d{3})+$)/g, '\u202F') : whole;
  return `${apart}${part === undefined ? '' : `.${part}`} g`;
};

interface WeighedLine {
  material: string;
  grams: number;
  addition: boolean;
}

const gramsOf = ({ grams }: WeighedLine): string => weighed(grams);

interface Made {
  gravity: number;
  volume: number;
  volumeU95: number;
}

const mixture = ({ gravity, volume, volumeU95 }: Made, units: UnitSystem): Text =>
  t`${[volumeTo(volume, volumeU95, units)]} at ${[gravityText(gravity)]}`;

export const batchWords = {
  about: 'Correct a bucket, plan a new batch, blend two, keep recipes',
  plan: 'Plan a new batch: grams of each material, water, and a sheet to print',
  blend: 'What you get when you pour two buckets together',
  correct: 'How to bring a bucket’s gravity to the middle of its window',
  recipe: 'Keep a recipe under a name',
  recipes: 'The recipes that the studio keeps',
  bucket: 'Which bucket: name, nickname or number',
  by: 'How to correct it',
  with: 'The bucket to blend in',
  recipeOption: 'A recipe by name, or typed: feldspar 44, silica 31, whiting 25, + red iron oxide 3',
  gravities: 'Grain gravity of materials that the studio doesn’t know: local clay 2.6',
  volume: 'How much glaze to make',
  powder: 'Or how much dry powder to use up',
  gravity: 'The gravity that it should have',
  pail: 'The pail that it goes into',
  scaleStep: 'The smallest step that the scale shows',
  mesh: 'The mesh of its sieve',
  first: 'The bucket that you pour into',
  second: 'The bucket that you pour in',
  amount: 'How much of it, if not all',
  name: 'The recipe’s name',

  notGlaze: (gravity: number): Text =>
    t`A gravity of ${[String(gravity)]} is that of water or less. A glaze is above 1.`,
  beyondPowder: (gravity: number, particleGravity: Gravity): Text =>
    t`No glaze made of this powder reaches ${[String(gravity)]}: its dry grains are at ${[particleGravity.toFixed(2)]}, and water makes every glaze lighter than its grains. Dipping glazes are near 1.45.`,
  paste: (gravity: number, fraction: number): Text =>
    t`At ${[String(gravity)]}, ${[String(Math.round(100 * fraction))]} % of the volume would be powder. That is a paste, not a glaze. Dipping glazes are near 1.45.`,
  tooSmall: (step: number): Text => t`That is less than the scale's step of ${[String(step)]} g.`,
  volumeOrPowder: t`Say how much to make (volume:15l) or how much dry powder to use up (powder:5kg), not both.`,
  planTitle: (powder: number, water: number, volume: number, gravity: number, units: UnitSystem): Text =>
    t`${[massText(powder, units)]} of powder in ${[volumeAbout(water, units)]} of water makes ${[volumeText(volume, units)]} at ${[gravityText(gravity)]}.`,
  weighed: (materials: readonly WeighedLine[]): Text => recipeLine(materials, gramsOf),
  /** The same of a part of them: a base, or what goes over one. */
  weighedPart: (materials: readonly WeighedLine[]): Text => materialsText(materials, gramsOf),
  factMaterials: 'Weigh out',
  factWater: 'Water',
  /** Water as the scale shows it. */
  waterFact: (grams: number, units: UnitSystem): Text => [`${volumeAbout(grams, units)} (${weighed(grams)})`],
  grams: (grams: number): Text => [weighed(grams)],
  factMore: 'Also',
  factOver: 'Added on top',
  factTotal: 'Powder in all',
  factPail: 'Pail',
  fits: (volume: number, pail: number, usable: number, units: UnitSystem): Text =>
    volume <= usable
      ? t`${[volumeText(volume, units)]} in a ${[volumeText(pail, units)]} pail: it fits, with room to stir`
      : volume <= pail
        ? t`${[volumeText(volume, units)]} in a ${[volumeText(pail, units)]} pail: it fills the pail to the rim, with no room to stir; make less`
        : t`${[volumeText(volume, units)]} does not fit a ${[volumeText(pail, units)]} pail: you need ${Math.ceil(volume / usable)} pails`,
  planSteps: (water: { first: number; back: number }, order: WeighingOrder, mesh: number | 'never'): Text[] =>
    present([
      [`Put ${weighed(water.first)} of the water in the pail; keep ${weighed(water.back)} back.`],
      order.slake.length > 0 &&
        t`Does ${saidNames(order.slake)} come in lumps? Weigh it dry, and let it slake in that water overnight first.`,
      order.dissolve.length > 0 &&
        t`Dissolve ${saidNames(order.dissolve)} in a little of that water, warm, before any powder goes in.`,
      order.premix.length > 0 &&
        t`Mix ${saidNames(order.premix)} dry into another powder, or it makes lumps.`,
      t`Weigh the other powders, the largest first, and tick each off${order.weigh.length === 0 ? [] : t`: ${saidNames(order.weigh)}`}. Slide the powder onto the water; never pour water onto powder.`,
      order.last.length > 0 &&
        t`Weigh ${saidNames(order.last)} last, with gloves and mask, and close its bag at once.`,
      t`Let it soak overnight, then mix it.`,
      mesh === 'never'
        ? t`This glaze is never sieved: mix it until no lumps are left.`
        : [`Sieve it twice through ${mesh} mesh, rinsing the sieve with the water kept back.`],
      t`Stir to the bottom, measure, and add the rest of the water only if it needs it.`,
    ]),
  of: 'Is that weight all of the powder, or its base, with the additions on top?',
  ofNeedsPowder: t`of: goes with a weight of powder, such as powder:10kg of:base.`,
  roundPowder: (typed: string, of: string): Text =>
    t`Plan ${[typed]} of ${[of === 'base' ? 'base' : 'powder']}`,
  wholeBag: (bag: string, material: string): Text => t`Use up a ${[bag]} bag of ${said(material)}`,
  materialCaution: (caution: MaterialCaution, materials: readonly string[]): Text =>
    t`${saidNames(materials)}: ${[materialCautions[caution]]}.`,
  newBatch: 'New batch',
  solidsOfMix: (solids: number): Text => t`Gravity of the mixed powder: ${[solids.toFixed(2)]}.`,
  factSolids: 'Powder gravity',
  solids: (value: number): Text => [value.toFixed(2)],
  sheetDate: (now: Instant): Text => t`Planned ${{ at: now, show: 'day' }}.`,
  sheetDone: 'Done',
  sheetMaterial: 'Material',
  sheetGrams: 'Grams',
  sheetPowder: 'Powder in all',
  sheetMeasured: 'Gravity measured:',
  sheetBy: 'By:',
  sheet: t`The sheet to print comes with this answer.`,

  blendTitle: (first: string, second: string, made: Made, units: UnitSystem): Text =>
    t`${said(first)} and ${said(second)} make ${mixture(made, units)}.`,
  /** The pail has no room for all of it; the part that fits, and what that makes. */
  tooMuch: (
    first: string,
    second: string,
    { made, pail, part }: { made: Made; pail: number; part: (Made & { poured: number }) | undefined },
    units: UnitSystem,
  ): Text => {
    const all = t`${said(first)} and ${said(second)} make ${mixture(made, units)}: more than the ${[volumeText(pail, units)]} pail holds with room to stir.`;
    return part
      ? t`${all} Mix them in a bigger tub, or pour in only ${[volumeText(handAmount(part.poured), units)]}, for ${mixture(part, units)}.`
      : t`${all} Mix them in a bigger tub, or ladle some out first.`;
  },
  sameBucket: t`A bucket can’t be blended with itself.`,
  unmeasured: (name: string): Text => t`Measure ${said(name)} first: stir it, then weigh a cup.`,
  needsVolume: (name: string): Text =>
    t`How full is ${said(name)}? Say it in a reading, such as two thirds, and ask again.`,
  moreThanHeld: (name: string, held: number, units: UnitSystem): Text =>
    t`${said(name)} holds only about ${[volumeAbout(held, units)]}.`,
  factGravity: 'Gravity',
  within: (value: number, u95: number): Text => [gravityWithin(value, u95)],
  factFlocculant: 'Flocculant',
  flocculant: (percent: number, grams: number, unknown: boolean): Text =>
    unknown
      ? t`at least ${[massText(grams)]} of Epsom salt, ${[percentText(percent)]} of its dry weight: one dose was logged without its amount`
      : grams === 0
        ? t`none`
        : t`${[massText(grams)]} of Epsom salt, ${[percentText(percent)]} of its dry weight`,
  intoWindow: (name: string, window: Window<number>, inside: boolean): Text =>
    inside
      ? t`Inside the window of ${said(name)}, ${[windowText(window)]}.`
      : t`Outside the window of ${said(name)}, ${[windowText(window)]}: correct it after you have measured.`,
  blendSteps: [
    t`Stir both to the bottom before you pour. These numbers leave out any cake that stays at the bottom.`,
    t`Try it first: mix a cup of the two in the same proportions, and fire a test tile.`,
    t`Stir, then measure the mix.`,
  ],
  pouredIn: (amount: string): Text => t`I poured in ${[amount]}`,
  step: (n: number, text: Text): Text => t`${n}. ${text}`,
};
