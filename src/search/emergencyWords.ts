import { wordOfEachForm, wordsIn } from './wordLists.ts';

/** Words of an emergency, and the forms in which people type them. */
export const wordOfForm = wordOfEachForm({
  person: `i im ive he hes hed she shes shed they theyre theyve we weve us me him them someone somebody sombody
    somone sumbody person people member members student students kid kids child children toddler baby friend
    woman man lady guy girl boy lad son daughter wife husband everyone everybody teacher potter colleague
    partner grandpa grandma grandad granny mum mom dad myself himself herself themselves dog dogs cat puppy
    nephew niece pupil pupils sister brother girls boys grandson granddaughter nan gran mans womans guys
    bloke chap uncle aunt auntie cousin teenager teen infant pensioner visitor neighbour neighbor`,
  persons: 'my his her hers their our someones somebodys',
  limb: `hand hands finger fingers thumb thumbs arm arms wrist wrists leg legs toe toes head skin lip lips knee
    palm palms forearm forearms elbow neck ear ears nose cheek shin ankle knuckle knuckles shoulder scalp
    fingertip fingertips chin forehead thigh thighs`,
  face: 'face faces',
  foot: 'foot feet heel heels',
  eye: 'eye eyes eyeball eyelid ey eys eyse',
  chest: 'chest chested',
  tight: 'tight tightness tightening tightens',
  throat: 'throat airway windpipe tongue',
  lung: 'lung lungs',
  breathe: 'breathe breath breathing breathes breaths breathed breth brethe',
  wheeze: 'wheeze wheezing wheezes wheezy wheezed',
  choke: 'choke choking chokes choked',
  gasp: 'gasp gasping breathless suffocating suffocate suffocated',
  cough: 'cough coughing coughs coughed',
  asthma: 'asthma asthmatic',
  inhaled: 'inhaled inhaling',
  dizzy: 'dizzy dizziness lightheaded woozy giddy',
  sick: 'sick nauseous nausea ill queasy',
  vomit: 'vomit vomiting vomits vomited puking puked',
  headache: 'headache headaches migraine',
  swell: 'swell swelling swollen swells swelled',
  faint: 'faint fainter faintest faintly',
  fainted: 'fainted fainting faints',
  unconscious: 'unconscious unresponsive comatose',
  collapsed: 'collapsed colapsed colapse colapses collapsing collapse collapses',
  slumped: 'slumped slumping',
  seizure: 'seizure seizures convulsing convulsion convulsions fitting epileptic',
  respond: 'respond responding responds answer answering',
  wake: 'wake waking woke wakes',
  droop: 'droop drooping droops drooped',
  electrocuted: 'electrocuted electrocution electrocute electrocuting',
  electric: 'electric electrical electricity',
  shock: 'shock shocks shocked zap zapped zaps jolt jolted zapping shocking',
  tingle: 'tingle tingles tingling buzzes',
  fire: 'fire fires fier fyre',
  ablaze: 'ablaze alight aflame blaze blazing',
  smoulder: 'smoulder smouldering smoldering smolder',
  flame: 'flame flames',
  burning: 'burning burns burn',
  burned: 'burned burnt scalded scald scalding scorched singed',
  smoke: 'smoke smoking smokes smoky smokey',
  sparks: 'sparks sparking',
  exploded: 'exploded explosion exploding',
  gas: 'gas propane butane lpg',
  smell: `smell smel smells smelling smelled smelt stink stinks stinking reek reeks stank whiff pong pongs niff`,
  leak: 'leak leaking leaks leaked leek',
  hiss: 'hiss hissing hisses',
  alarm: 'alarm alarms detector detectors siren sirens',
  sounds: `beep beeping beeps bleep bleeping ring ringing rings rang shouting shout shouts yelling sound sounding
    sounds chirp chirping chirps scream screaming screams screeching blare blaring wail wailing triggered
    flashing howling`,
  swallowed: 'swallowed swallowing ingested swallows',
  drank: `drank drunk ate eaten licked chewed eated drinked nibbled munched sipped tasted gulped sip swig gulp
    mouthful drinks licks eats licking lick chewing necked swigged downed gulping sipping munching nibbling`,
  sucked: 'sucked sucking sucks',
  bitten: 'bitten bites',
  belly: 'belly stomach tummy',
  talk: 'talk talks talking speak speaks speaking speech',
  sweating: 'sweating sweats',
  shaking: 'shaking shakes trembling',
  twitching: 'twitching twitches twitchy',
  jerking: 'jerking jerks',
  lopsided: 'lopsided wonky crooked',
  peel: 'peel peeling peeled peels',
  gash: 'gash gashes',
  cry: 'crying cries agony',
  leaned: 'leaned leant leaning',
  mouth: 'mouth mouths',
  poisoned: 'poisoned poisend',
  glaze: 'glaze glazes',
  struggling: 'struggling struggle struggles struggled',
  splashed: 'splashed splash splashes squirted sprayed flew poked rubbed scratched spattered splattered',
  hurts: `hurt hurts hurting sting stings stinging sore red painful pain itching itches itchy watering gritty
    aching`,
  hot: 'hot molten boiling melted steam steaming',
  blister: 'blister blisters blistering blistered',
  cut: `cut cuted cutted sliced chopped slashed stabbed gashed nicked lacerated punctured impaled slit severed`,
  bleed: 'bleed bleeding bleeds bled',
  blood: 'blood bloody',
  crushed: 'crushed smashed squashed squished mashed',
  gush: 'gushing gush spurting pouring squirting',
  shard: 'shard shards glass splinter splinters sliver slivers',
  caught: 'caught cought',
  stuck: 'stuck trapped jammed tangled wrapped',
  mixer: 'mixer drill pugmill pug roller rollers extruder paddle whisk blender grinder machine pugger',
  monoxide: 'monoxide monoxid',
  overheat: 'overheat overheating overheats',
  heart: 'heart heartbeat',
  racing: 'racing pounding fluttering palpitating palpitations',
  hair: 'hair sleeve scarf apron aprons necklace cardigan ponytail clothes shirt glove gloves',
  chlorine: 'chlorine',
  acid: 'vinegar acid ammonia',
  mixed: 'mixed poured put added tipped mix pour',
  injured: 'injured injury',
  ambulance: 'ambulance ambulances paramedic paramedics',
  badly: 'badly seriously severely bad',
});

/** Real words that are one letter away from one above, so they are not corrected. */
export const realWords: ReadonlySet<string> = new Set(
  wordsIn(`
    drowned drown alright angle angles blame bloom blooms breach breed bread chapped cheat chess chipped
    chores chose confusing confusion conclusion conclusions conversion consulting excluding exclusion
    expanding exploring flake flakes flaked flare flushing frame frames hangs lacked lacking lacks licence
    liking linked linking links severe scaled scolded shell shells sing skipped slash slashes slices spell
    spelled spelling stack stacks stemming stemmed stung socks threat trigger triggers wheel wheels wrapper
    shopped shape shake shave stick sticks`),
);
