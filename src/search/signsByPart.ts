import type { Emergency } from '../studio/handbook.ts';

/**
 * Signs put together from parts: whose body, what it met, and the harm. A question that has all three reports an
 * accident, however it is worded.
 */
const body = 'limb|face|foot|eye|mouth|chest|throat|tongue|back|belly';
/** The body of somebody: “my wrist”, “the boy’s hand”. */
const own = (part = body): string => `persons ~1 ${part}`;

const substance =
  'glaze|powder|bucket|bleach|latex|wax|deflocculant|silica|slip|underglaze|epsom|flocculant|dust|acid|frit|oxide|stain|' +
  'plaster|clay|chemical|chemicals|rinse|goo|stuff|mud|feldspar|kaolin|cobalt|copper|iron|manganese|barium|lithium|borax|celadon|tenmoku|shino';
const carrier =
  'brush|sponge|spoon|stick|rag|cup|mug|jar|lump|chunk|crumb|flake|shard|finger|limb|water|bottle|it|some';
const powered =
  'mixer|kiln|plug|socket|wire|cable|outlet|lead|strip|switch|element|controller|heater|light|motor|fan';
const hotThing = 'kiln|element|burner|kettle|torch|iron|hot|flame|pan';
const sharp = 'shard|blade|knife|tool|needle|wire|nail|screw|edge|drip|drips|chip|glass|shelf|staple';
const machine = 'mixer|wheel|rollers|pugmill|blunger|extruder|motor';
const bad = 'blister|hurts|burned|burning|peel|swell|ow|ouch|raw|limb|cry';

export const signsByPart: Partial<Record<Emergency, readonly string[]>> = {
  swallowed: [
    `person|named ~4 drank ~7 ${substance}`,
    `person|named ~4 sucked|bitten ~7 ${substance}`,
    `^ ~1 sucked|drank|bitten !up ~4 ${substance}`,
    `person|named ~4 drank|sucked|bitten ~4 ${substance} ~2 ${carrier}`,
    `${substance}|white|blue|green|red|black|brown ~3 in|on|round|around|over|inside ${own('mouth|tongue|teeth')}`,
    `person|named ~6 thinking|thought it was ~2 water|drink|tea|coffee|juice|milk|squash`,
    `drank ~6 thinking|thought it was`,
    `drank + was|had ~2 ${substance} ~1 bucket|cup|jar|water $`,
  ],
  eye: [
    `eye ~6 wont|cant|cannot ~1 open|shut|close`,
    `pinged|flew|hit|poked|popped|shot|spat|jumped|splashed ~4 ${own('eye')}`,
    `got|get ~5 persons eye`,
  ],
  breathing: [
    `cant|cannot|couldnt ~1 draw|catch|get|find ~2 breathe|air`,
    `person ~2 gone|going|goes|turned|turning|turns ~1 blue|purple`,
    `${own('tongue|throat|limb|face|mouth')} ~4 swell`,
    `tongue ~4 fat|thick|big|huge`,
    `stung|bitten|sting|wasp|bee|hives|allergy|nut|nuts + tongue|throat|face|limb|eye|breathe|hives + swell|closing|fat|tight|puffy|cant`,
    `hives + swell|breathe|throat|tongue|face`,
    `chest|heart + jaw|limb|sweating|sweaty|squeezed|crushed|crushing|pressure|belt|band|elephant`,
    `person ~3 gone|going|turned|turning ~1 grey|gray|blue|purple ~4 sweaty|sweating|limb|chest|breathe`,
    `cough ~6 purple|blue|blood|breathe`,
  ],
  collapsed: [
    `person|named ~3 went|gone|goes ~1 down $`,
    `person|named ~2 went|gone|goes ~1 down like|and|hard|suddenly|by|in`,
    `person|named ~4 on the ~1 floor|ground|deck + shaking|twitching|jerking|still|trembling|move|moving|cant|grey`,
    `person|named ~3 twitching|jerking|convulsing`,
    `twitching|jerking|shaking ~4 eye ~2 rolled|rolling`,
    `${own('eye')} ~2 rolled|rolling`,
    `person|named ~2 cant|cannot|couldnt ~1 lift|raise|move|feel|use ${own('limb|leg|side|face|foot')}`,
    `person|named ~6 talk ~2 funny|strange|weird|odd|slurred|nonsense|rubbish|slow|gibberish`,
    `talk ~2 funny|slurred|gibberish|nonsense`,
    `person|named ~2 suddenly cant|cannot|couldnt ~1 talk|speak|see|walk`,
    `cant|cannot ~1 talk|speak ~1 right|properly|straight`,
    `face|mouth ~4 lopsided|crooked|droop|numb`,
    `one side of ${own('face|body|mouth')} ~3 droop|numb|dropped|weak|dead|funny`,
    `${own('limb|leg|face')} + numb|weak|limp + talk|speech|face|suddenly|droop`,
    `person|named ~3 wont|not|cant|cannot|isnt ~1 wake|respond`,
  ],
  burns: [
    `leaned|touched|grabbed|brushed|bumped|sat|fell|fallen ~4 kiln|element|hot|kettle|burner|stove|torch + ${bad}`,
    `${own('limb|face|foot')} ~4 stuck ~3 kiln|element|hot|lid`,
    `${own('limb|face|foot')} ~4 against|on|onto|in|into ~2 kiln|element|flame|torch|burner|hot + ${bad}`,
    `limb|face|foot ~4 against|touched ~2 element|flame|torch|burner|hot`,
    `limb ~3 peel|bubbling`,
    `limb ~1 came|coming|falling off`,
    `steam|kettle|boiling|scalding|burned|molten ~3 ${own('limb|face|foot|belly|back')}`,
    `${own('limb|face|foot')} ~4 ${hotThing} ~4 blister`,
  ],
  fire: [
    `${powered} ~3 smell ~3 burning`,
    `smell ~3 burning ~8 mixer|plug|socket|cable|outlet|lead|motor|wire|controller`,
    `${powered} ~4 wont|not|cant|cannot|doesnt ~1 switch|turn|shut|go|stop off + burning|smoke|hot|smell`,
    `caught|catches|catching light|alight`,
    `sparks + went|goes|gone up`,
    `sparks + smoke|flame|burning|fire`,
    `paper|table|rag|curtain|bench|box|bin|cloth|sleeve|apron ~2 went|goes|gone up !to|for|in|and|on|a|the`,
    `${powered} ~3 melted ~3 smoke|burning|smell`,
  ],
  shock: [`tingle ~4 tap|sink|metal|handle|lid|${powered}`, `${powered} ~4 bit|kicked|threw person`],
  'gas-leak': [`burner|pilot ~2 out ~6 gas`, `burner|pilot ~3 blown|blew|went|gone out !in`],
  alarm: [`fire|smoke|co bell ~3 sounds|going|went|off`, `alarm ~6 sounds`],
  cuts: [
    `opened|ripped|tore|torn|split|cut|took|caught ~2 ${own('limb|face|foot|belly')} ~2 open|off|badly|deep|bleed`,
    `opened|ripped|tore|cut ~1 up ${own('limb|face|foot')}`,
    `gash|slice|hole|cut ~3 in|on|across|down ${own('limb|face|foot|belly')}`,
    `${sharp} ~5 through|into|in ${own('limb|face|foot|belly')}`,
    `${own('limb|face|foot')} + ${sharp} + bleed|blood|deep|cut|stitches`,
    `blood ~3 pumping|gush|spurting|dripping|running|pouring|coming|everywhere`,
    `blood|bleed ~3 from|down|out ~2 ${own()}`,
  ],
  caught: [
    `hair|limb ~4 caught|stuck|pulled|wound|wrapped|tangled|dragged|sucked|trapped ~4 ${machine}`,
    `hair|limb ~2 in|into|round|around|inside ~2 ${machine} !bucket|bowl|head|room`,
    `${machine} ~3 caught|pulled|grabbed|dragged|has|got|wound|eating ~2 ${own('limb|hair')}`,
  ],
  hurt: [
    `came ~1 down ~2 on ${own('limb|foot|head|back|leg')}`,
    `dropped|fell|fallen|landed ~4 on|onto ${own('limb|foot|head|back|leg')}`,
    `person|named ~2 slipped|fell|fallen|tripped ~8 cant|cannot|hurts|broken|broke|ankle|head|back`,
    `knocked|banged|hit|bumped|cracked ${own('limb|head')} ~8 sick|vomit|dizzy|unconscious|bleed|asleep|confused|hurts`,
    `${own('back|limb|foot|leg')} + cant|cannot + move|walk|stand|bend|get`,
    `${own('limb|foot|leg|ribs')} ~5 broken|broke|crushed|snapped`,
    `think ~4 limb|foot|leg ~2 broken|broke`,
    `limb|foot ~1 crushed|trapped|under ~3 shelf|kiln|bucket|lid|door`,
  ],
};

/** Parts of ware that are called like parts of a body. */
const wareParts = 'limb|face|eye|mouth|throat|chest|foot|heart|back|belly|throat|tongue|head';
const wareNames =
  'jug|teapot|vase|pot|bowl|mug|jar|bottle|plate|figure|sculpture|fish|bird|handle|tripod|needle|dish|pitcher|casserole|cup|bucket|shelf|kiln|spout|tile|mask';

/** The words of ware in a question, for first aid to pass over. */
const wareWords: readonly RegExp[] = [
  // “The mouth of the jug”, “eye of the needle”.
  new RegExp(
    ` (?:${wareParts})(?: \\S+)? of (?:the|a|an|my|our|this|that|persons)(?: \\S+)?(?= (?:${wareNames})s? )`,
    'g',
  ),
  // “The face on my sculpture”.
  new RegExp(
    ` (?:${wareParts}) on (?:the|a|an|my|our|this|that|persons)(?: \\S+)?(?= (?:figure|figurine|sculpture|statue|fish|bird)s? )`,
    'g',
  ),
  // “The jug’s mouth”, “teapot lip”.
  new RegExp(` (?:${wareNames})s? (?:${wareParts})(?= )`, 'g'),
  // “Hand built”, “heart shaped”, “face jug”.
  new RegExp(
    ` (?:limb|face|heart|eye) (?:built|building|build|shaped|made|thrown|painted|cut|held|jug|jugs|print|prints|mark|marks)(?= )`,
    'g',
  ),
];

/** The question without body parts that are parts of ware. */
export const withoutWareParts = (words: string): string =>
  wareWords.reduce((left, pattern) => left.replace(pattern, ' part'), words);
