import type { Emergency } from '../studio/handbook.ts';

/**
 * What is typed in an emergency, word by word: `a|b` is one of them, `~3` up to three others, `!a` not followed by it, `^` the
 * beginning and `$` the end. `unless`: what only sounds like it. The words are those of emergencyWords.
 */
export interface Signs {
  signs: readonly string[];
  unless: readonly string[];
}

const powered = 'mixer|kiln|plug|socket|wire|cable|outlet|lead|switch|element|controller|heater|light';
const ware =
  'bowl|bowls|vase|mug|mugs|pot|pots|jug|shelf|wall|walls|rim|glaze|kiln|lid|piece|pieces|plate|it';
const stuff =
  'glaze|powder|bucket|bleach|latex|wax|deflocculant|silica|slip|underglaze|epsom|flocculant|dust|acid|chip';
const place =
  'studio|room|kiln|shed|building|roof|table|bin|pan|pot|wax|hair|sleeve|towel|paper|cloth|rag|plug|socket|cable|mixer|shelf|place|bench|fan';

export const signsOf: Record<Emergency, Signs> = {
  shock: {
    signs: [
      'electrocuted',
      'electric shock',
      'got|get|gets|gave|give|gives|getting|had|felt|feel ~4 shock',
      `shock|tingle ~2 from|off|by ~2 ${powered}`,
      `${powered} ~3 shock|tingle`,
      `mixer|${powered} ~2 fell|dropped|fallen|falls ~4 bucket|water|glaze|sink`,
      `dropped ~2 ${powered} ~3 bucket|water|glaze|sink`,
      `stuck ~2 to ~1 ${powered}`,
      `live wire|cable`,
      `${powered} ~2 sparks`,
      `sparks ~3 ${powered}`,
    ],
    unless: [
      'thermal|heat shock',
      'glaze|pot|piece got|was shock',
      'shock pink|resistant|resistance',
      'shock at|by ~2 price|color|result',
    ],
  },
  fire: {
    signs: [
      '^ ~2 fire $',
      'fire fire',
      '^ fire|flame|smoke in|at|on|help|everywhere',
      '^ fire what ~1 do',
      '^ help fire',
      'on fire !schedule|duty|day|watch',
      'caught|stuck|catching|catches fire',
      'a|theres fire in|at|on|by|near|under|behind|inside',
      'there is ~1 fire',
      'put out ~3 fire|flame',
      'how ~3 put ~3 fire|flame out',
      'wax|electric|fat|oil fire',
      'in flame',
      'burst into flame',
      'flame coming|shooting|everywhere|from|out|leaping|pouring',
      `${place} ~2 ablaze`,
      `${place} is|are|started|starts|keeps burning !out|off|away`,
      'on|with|at|the|my|our burning wax',
      'something ~1 burning !smell',
      'full|filled|filling of|with ~1 smoke',
      'thick|black|much|lots|clouds ~1 smoke',
      'smoke ~3 pouring|gush|coming|everywhere|filling|billowing|out',
      'smoke in the ~1 studio|room|building|hall',
      'plug|socket|cable|mixer|outlet|controller|fan|wire ~2 smoke',
      'kiln|tank|bottle|cylinder|burner ~1 exploded',
    ],
    unless: [
      'smoke fire|firing|fired',
      'reduction|raku|peep|burner|saggar|pit|barrel ~6 flame|smoke|fire',
      'flame ~6 reduction|raku|peep|burner',
      '^ can|could|does|will|would|is|how|what ~4 catch|caught fire',
      'fire in a|an|the gas|electric|wood',
    ],
  },
  'gas-leak': {
    signs: [
      'smell ~2 gas !kiln|firing|fired|bubbles|burner',
      'gas smell',
      'gas ~2 leak',
      'leak ~1 gas',
      'gas ~2 hiss',
      'hiss ~2 gas',
      'hear|left|leaving ~2 gas',
      'gas ~2 left on',
      'rotten egg|eggs ~4 kiln|burner',
    ],
    unless: ['bleach|chlorine gas', 'hear ~2 gas kiln|firing'],
  },
  'bleach-gas': {
    signs: [
      'mixed ~2 bleach ~4 acid|latex',
      'mixed ~2 acid|latex ~4 bleach',
      'smell ~3 chlorine|bleach',
      'chlorine|bleach ~1 smell|fumes|gas',
      'swimming pool smell',
      'smell ~3 swimming pool',
      'inhaled|breathe ~3 bleach|chlorine',
      'bleach|chlorine ~8 cough|coughing|throat|wheeze',
    ],
    unless: ['can|should|may|could asker ~3 mixed', 'before bleach'],
  },
  alarm: {
    signs: [
      'alarm ~4 sounds',
      'alarm ~3 going|goes|went|gone|keeps|wont|doesnt ~2 off|stop|stopping|going',
      'alarm ~2 is on',
      'sounds ~2 alarm',
      'what ~3 alarm ~2 mean',
    ],
    unless: [
      '^ ~1 set|schedule|make|put ~3 alarm',
      '^ do|does|should|will|can|when|where !anyone ~8 alarm',
      'alarm ~4 supposed',
      'test|testing ~3 alarm',
      'alarm clock',
    ],
  },
  caught: {
    signs: [
      'hair|body|who|foot ~4 stuck ~4 mixer',
      'mixer ~2 stuck|pulled|grabbed|got|has ~2 hair|body|who|whose',
      'pulled ~2 into ~1 mixer',
    ],
    unless: ['nearly|almost|avoid', 'stuck to ~1 mixer'],
  },
  collapsed: {
    signs: [
      'fainted',
      'passed|passing|passes|knocked|pass out',
      'blacked|blacking out',
      'unconscious',
      'not|stopped|isnt|stops|no breathe',
      'wont|not|isnt|cant|doesnt ~1 respond|move|moving',
      'seizure',
      'having|has|had a fit',
      'heart attack|stopped',
      'cardiac arrest',
      'having|had|has a stroke',
      'no pulse',
      'who ~3 collapsed',
      'who ~3 keeled|dropped over|down',
      'lying|lies|laying|fell ~2 on the floor',
      'who ~2 dying',
    ],
    unless: [
      `${ware} collapsed`,
      `${ware} has|is|are|just|all|keeps|kept|always|wall|walls collapsed`,
      'glaze|door|lid|water|bucket|slip|mixer|lump|lumps ~2 wont|not|isnt|cant|doesnt ~1 respond|move|moving',
    ],
  },
  breathing: {
    signs: [
      'cant|cannot|couldnt|barely|hardly|unable ~4 breathe',
      'hard|difficult|difficulty|trouble|struggling|problem|problems|painful ~3 breathe',
      'short|shortness|out of breathe',
      'wheeze',
      'who ~3 choke',
      '^ ~1 choke',
      'choke on',
      'choke $',
      'gasp',
      'asthma attack',
      'chest ~3 tight|hurts|heavy|pain|pains|burning|burned',
      'tight ~2 chest',
      'pain|pains|hurts ~3 chest',
      'throat ~3 closing|swell|tight|closed|burning',
      'lung ~2 hurts|burning|tight',
      'face|body|lips ~2 swell ~6 breathe',
      'whose body ~2 swell',
      'lips|face|body ~2 blue',
      'inhaled|breathe ~3 fumes|smoke|gas|monoxide',
      'dizzy',
      'light headed',
      'feel|feeling|feels|going ~2 faint',
      'headache ~6 kiln|fumes|sick|everyone|room',
      'kiln|fumes|everyone|who ~8 headache',
      'fumes ~4 sick',
      'who ~3 feel|feeling|feels ~1 sick',
      'stop|stopping coughing',
      'all coughing',
      'carbon monoxide poisoning',
    ],
    unless: [
      'is it ~3 to breathe',
      'faint ~1 line|color|blue|green|tint',
      'hold ~2 breathe',
      'chest freezer|height',
    ],
  },
  swallowed: {
    signs: [
      'swallowed',
      `who ~8 drank ~6 ${stuff}|it|brush|some|cup|water|bit`,
      `drank ~5 ${stuff}`,
      'took|had|taken a drank',
      `${stuff}|it|some|stuff|lump in|into whose|who ~1 mouth`,
      'put ~3 in|into whose ~1 mouth',
      'who ~3 been poisoned',
      'who poisoned',
      'who ~4 throwing|threw up',
      'thought it was ~2 drink|juice|milk|tea|coffee|water',
      'mistook ~6 drink|juice|milk|tea|coffee',
    ],
    unless: [
      'drank a|my|some|our|the|his|her|whose lunch|dinner|snack|sandwich|cake|breakfast|coffee|tea|biscuit|biscuits|beer|wine',
      'bisque|clay|body|pot|tile|sponge|plaster ~3 drank',
      'drank ~3 out of|from ~2 mug|bowl|cup|plate ~3 foodsafe|safe',
    ],
  },
  eye: {
    signs: [
      'in|into|inside whose|who ~2 eye',
      'got|get|gets|splashed|went|something ~5 in|into|inside ~2 eye',
      'eye ~4 burning|hurts|stings|swell|burned|bleed',
      'splashed ~4 eye',
      'splashed ~3 in|into|over|on|up ~3 whose face|body',
      `caustic|${stuff} ~3 in|into the|an|one eye !of`,
    ],
    unless: ['eye protection|wash|bath|level|line', 'by eye', 'caustic bucket', 'sound|sounds in'],
  },
  burns: {
    signs: [
      'burned ~3 body|foot',
      'burned who',
      'who ~3 burned !out|off|onto|away|whose|the|a|it',
      'burning|burned ~1 on whose ~1 body|foot',
      'hot ~4 on|over|onto|in|down ~3 body|who|foot|whose',
      'hot ~3 splashed ~3 body|who|whose',
      'grabbed|touched|leaned ~2 hot',
      'body|foot ~7 blister',
      'blister ~2 on whose body',
      'body|foot ~2 burning|burned',
      'steam burning|burned',
      'lye|caustic|acid ~3 on ~2 body|whose|who',
    ],
    unless: [
      'finger|body ~1 mark|marks|print|prints',
      'who ~3 burned ~3 out|glaze|wax|pot|bisque|kiln $',
      'burned out in',
    ],
  },
  cuts: {
    signs: [
      'cut ~1 body|who',
      'cut whose ~2 body|who',
      'cut whose ~1 foot !ring|rim|of',
      'body|foot ~3 cut ~2 open|deep|badly|off',
      'who|body|foot|whose ~4 bleed',
      'bleed ~3 badly|lot|heavily|everywhere|stop',
      'stop ~3 bleed',
      'blood ~2 everywhere|gush|over',
      'lot|lots|so of|much blood',
      'gush ~2 blood',
      'body|foot ~3 gush',
      'shard ~6 in|into|under whose|the ~1 body|foot|who',
      'stepped ~3 shard',
      'deep cut',
    ],
    unless: [
      'glaze|underglaze|color|red|blue|black|white|green|cobalt|iron|copper|oxide|stain|line|wax|ink|tape|edge ~3 bleed',
      'bleed ~3 into|through|under|white|color',
      'cut ~1 body whose',
    ],
  },
  hurt: {
    signs: [
      'ambulance',
      'call|ring|dial 911|999|112|000',
      'medical|an|its emergency !exit|exits|light|lights|door',
      '^ emergency $',
      '^ ~2 help ~1 emergency',
      'emergency number',
      'badly injured|hurts',
      'bad|serious|terrible|an accident',
      'fell|fallen ~3 ladder|stairs',
      'poison control|line|centre|center',
      'anaphylaxis|anaphylactic|epipen',
      'who ~2 overdose',
    ],
    unless: ['an emergency ~2 if'],
  },
};

/** Words before a sign that say that nobody is hurt yet: somebody plans ahead. */
export const planned: readonly string[] = [
  'how|way|ways|best|try|want|need ~5 avoid|prevent|protect|keep',
  'so that|nothing',
  'policy|training|poster|procedure',
];

/** Words before a sign that only suppose it. */
export const supposed: readonly string[] = [
  'what|happens|ok|bad|dangerous|matter|worse|poisonous|toxic|safe|hurts if',
  'if|when you|anyone|anybody|a|the|people|someone|who',
  'in case',
  'what|when ~1 happens',
  'can|could you ~1 get|be|have|die|breathe|drank|swallowed',
];

/** Whoever asks this means it, whatever is supposed. */
export const whatNow: readonly string[] = ['what ~2 asker', 'what|how to', 'help'];

/** Questions begun like this, with nobody in them, ask what glaze or dust can do. */
export const asksOfKind: readonly string[] = ['^ is|are|can|could|does|do|will|would|how|why|what'];
