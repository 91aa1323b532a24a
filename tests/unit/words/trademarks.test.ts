import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { materials } from '../../../src/glaze/materials/materials.ts';
import { commands } from '../../../src/start/registry.ts';
import { describeCommands } from '../../../src/room/server/describeCommands.ts';
import { loadNotes } from '../../../src/seed/loadNotes.ts';
import { loadSeed } from '../../../src/seed/loadSeed.ts';
import { en } from '../../../src/words/en.ts';

/** Makers' names that people type for the thing itself, from memory: a word in any case, a space where a hyphen or none may be. */
const household = [
  [
    'scotch tape',
    'sello tape',
    'duck tape',
    'gorilla tape',
    'frog tape',
    'blu tack',
    'blue tack',
    'command strip',
  ],
  [
    'sharpie',
    'magic marker',
    'texta',
    'biro',
    'bic',
    'tipp ex',
    'wite out',
    'post it',
    'crayola',
    'china graph',
  ],
  [
    'windex',
    'ajax',
    'vim',
    'jif',
    'cif',
    'dettol',
    'lysol',
    'clorox',
    'domestos',
    'calgon',
    'drano',
    'brasso',
  ],
  ['simple green', 'wd 40', 'febreze', 'mr clean', 'fairy liquid', 'dawn soap', 'magic eraser', 'swiffer'],
  ['hoover', 'dyson', 'shop vac', 'scotch brite', 'brillo', 'j cloth', 'chux', 'kleenex', 'q tip'],
  ['elmer', 'super glue', 'krazy glue', 'gorilla glue', 'uhu', 'pritt', 'araldite', 'loctite', 'mod podge'],
  [
    'saran',
    'glad wrap',
    'cling film',
    'ziplock',
    'ziploc',
    'parafilm',
    'bubble wrap',
    'tupperware',
    'rubbermaid',
  ],
  [
    'styrofoam',
    'plexiglas',
    'plexiglass',
    'perspex',
    'lucite',
    'formica',
    'masonite',
    'sheetrock',
    'mylar',
    'tyvek',
  ],
  [
    'vitamix',
    'nutribullet',
    'magimix',
    'cuisinart',
    'kitchenaid',
    'bamix',
    'thermomix',
    'crock pot',
    'oster',
  ],
  [
    'velcro',
    'vaseline',
    'teflon',
    'gore tex',
    'lycra',
    'pyrex',
    'thermos',
    'jello',
    'jell o',
    'crisco',
    'pam',
  ],
  ['dremel', 'stanley knife', 'x acto', 'exacto', 'swiss army', 'band aid', 'elastoplast', 'chapstick'],
  ['play doh', 'plasticine', 'popsicle', 'frisbee', 'jacuzzi', 'dumpster', 'google', 'photoshop', 'xerox'],
  ['mop and glo', 'mop n glo', 'turtle wax', 'pledge', 'armor all', 'super soft wax', 'tylenol', 'aspro'],
].flat();

const maker = new RegExp(
  String.raw`(?<![\p{L}\p{N}])(?:${household.map((name) => name.replaceAll(' ', String.raw`[\s-]?`)).join('|')})(?:['’]?s|ed|ing)?(?![\p{L}\p{N}])`,
  'giu',
);
const found = (text: string): string[] => text.match(maker) ?? [];

const folder = (name: string) => new URL(`../../../src/${name}/`, import.meta.url);
/** The source text of a folder's files, without comments. */
const source = (name: string): string[] =>
  readdirSync(folder(name), { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      readFileSync(new URL(entry.name, folder(name)), 'utf8').replaceAll(
        /\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm,
        '',
      ),
    );

/** Search words of notes are typed by members, not printed. */
const notes = loadNotes().map(({ words: _, ...printed }) => JSON.stringify(printed));
const seed = JSON.stringify(loadSeed()).replaceAll(/ words:\\"[^"]*"/g, '');

it.each([
  ['the sentences', source('words')],
  [
    'what a command and its options are called, and what is offered',
    [JSON.stringify(describeCommands(commands, 'keeper', en))],
  ],
  ['the handbook', notes],
  ['the demo studio', [seed]],
  ['the materials', materials.map(({ name }) => name)],
  ['the room’s page', [...source('room'), ...source('room/page'), ...source('room/page/looks')]],
])('%s name no maker', (_, texts) => {
  expect(texts.join('').length).toBeGreaterThan(500);
  expect(texts.flatMap(found)).toEqual([]);
});

it('a maker’s name is seen in any case, however it is joined', () => {
  const text =
    'A Sharpie, Scotch-Brite, WD40, a Band-Aid and Q-tips; hoovered, not bicolour, vimful or Epsom salt.';
  expect(found(text)).toEqual(['Sharpie', 'Scotch-Brite', 'WD40', 'Band-Aid', 'Q-tips', 'hoovered']);
});
