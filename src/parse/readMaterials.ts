import { materialCautions, type MaterialCaution } from '../glaze/materials/materialTable.ts';
import { normalizedName } from '../text/normalizedName.ts';
import { definedOnly } from '../definedOnly.ts';
import { asciiText } from './readNumeral.ts';
import { readNumber } from './readQuantity.ts';

/** A line of a pasted list of materials. */
export interface MaterialLine {
  name: string;
  /** The name of a known material, as it was typed. */
  like?: string;
  hazards?: MaterialCaution[];
  soluble?: boolean;
  particleGravity?: number;
  /** What nobody understands in it. */
  unread: string[];
}

export const mostMaterials = 40;

const synonyms = new Map<string, MaterialCaution>([
  ['silica', 'silica dust'],
  ['dust', 'silica dust'],
  ['chrome', 'chromium'],
  ['poisonous', 'toxic'],
  ['corrosive', 'caustic'],
]);

/** Hazards with `and`, `+` or `/` between, or `none`; undefined if one of them is no hazard. */
const hazardsIn = (text: string): MaterialCaution[] | undefined => {
  if (/^(?:none|nothing|no|harmless|no (?:known )?hazards?)$/i.test(text)) return [];
  const found: MaterialCaution[] = [];
  for (const part of text.split(/\s*(?:\+|&|\/|\band\b)\s*/i)) {
    const said = normalizedName(part);
    const one = materialCautions.find((caution) => caution === said) ?? synonyms.get(said);
    if (one === undefined) return undefined;
    found.push(one);
  }
  return found;
};

const readLine = (text: string): MaterialLine => {
  const [, name = '', rest = ''] = /^(.*?)\s*(?:[:=,]|(?=\blike\b))\s*(.*)$/i.exec(text) ?? [undefined, text];
  const unread: string[] = [];
  let like: string | undefined;
  let hazards: MaterialCaution[] | undefined;
  let soluble: boolean | undefined;
  let particleGravity: number | undefined;
  for (const part of rest.split(/,(?!\d)|(?<!\d),/).map((one) => one.trim())) {
    if (part === '') continue;
    const alike = /^(?:it is )?like\s*:?\s+(.+)$/i.exec(part)?.[1];
    const solubility =
      /^(?<not>not |in|doesn't |does not |no )?(?:soluble|dissolves?)(?: in water)?(?:\s*[:=]?\s*(?<said>yes|no))?$/i.exec(
        part,
      );
    const number = readNumber(part.replace(/^(?:particle[ -]?gravity|gravity|grains?|sg)\s*[:=]?\s*/i, ''));
    const hazard = hazardsIn(part.replace(/^hazards?\s*[:=]?\s*/i, ''));
    if (alike !== undefined) like = alike;
    else if (solubility)
      soluble =
        (solubility.groups?.['not'] === undefined) === (solubility.groups?.['said']?.toLowerCase() !== 'no');
    else if (number.ok) particleGravity = number.value;
    else if (hazard) hazards = [...(hazards ?? []), ...hazard];
    else unread.push(part);
  }
  return { name: name.trim(), ...definedOnly({ like, hazards, soluble, particleGravity }), unread };
};

/** Materials, one a line or with semicolons between: `moon dust: like kaolin; black stain: cobalt + manganese, not soluble, 4.2`. */
export const readMaterials = (typed: string): MaterialLine[] =>
  typed
    .split(/[;\n]/)
    .map((line) => asciiText(line).replace(/^[-*•]\s+/, ''))
    .filter((line) => line !== '')
    .map(readLine);
