import { wordsIn } from './wordLists.ts';

const setOf = (words: string): ReadonlySet<string> => new Set(wordsIn(words));

/** Stop words: they are in every question and every note. */
export const stopWords = setOf(`
  a about after again all already also always am an and any anyone anything are as at be because been before
  being both but by came can cannot cant come comes could day did didnt do does doesnt doing done dont each
  ever every for from get gets getting give glaze glazed glazes glazing go goes going got had has have having
  he hello help her here hey hi him his how i if im in into is isnt it its ive just keep know let lot lots
  like make makes many may me mean might more most much must my need no not now of off oh ok okay on one only
  or our out over please pot pots pottery really same she should so some somebody someone something still
  stuff such than thank thanks that thats the their them then there these they thing things this those to
  today too tonight up us use used using very want was way we well went were what whats when where which while
  who whos why will with wont work would wrong yes yesterday yet you your youre bowl bowls clay fired firing
  mug mugs onto piece pieces plate plates right studio vase vases cup black blue green pink red white yellow`);

/** The most common words of English: they say little about a topic. */
export const everydayWords = setOf(`
  able accept across act actually add added adding afraid afternoon age ago agree alone along although amount
  another answer appear area arrive ask away awful back bad badly bag ball bar base basic became become bed
  began begin behind believe below best better between beyond big bit blow board body bottom box break bring
  broke build built burn buy call called care carry case catch cause certain change chance check choose clean
  clear close closed cold comment common complete consider continue corner correct cost country couple course
  cover create cross cut dad danger dark date days dead deal decide deep degree depend describe different
  difficult direct door doubt down draw drink drive drop due during early earth easy eat edge effect eight
  either else end enough enter entire even evening event everything exact example expect explain extra eye
  face fact fair fall family far fast feel feels feet felt few fill final find fine finish first five fix
  floor follow forgot forget form forward found four free fresh friend front full fun further game gave
  general gone good great group grow guess guy half hand hands happen happened happens happy hard hate head
  hear heard heat heavy held high hold home hope hot hour hours house however huge human hundred hurt idea
  important inch include inside instead interest issue itself job join keeps kept key kill kind kinds knew
  known large last late later lay lead learn least leave leaving left leg less letter level lie life light
  likely line list listen little live long look looked looking looks lose lost loud love low made main man
  manage mark matter maybe meant meet men message middle mind mine minute minutes miss mistake moment money
  month months morning mother move mum name near nearly needed needs never new next nice night nine none
  normal nothing notice number obvious odd often old once onto open order other others ought own page paper
  part parts pass past pay people perhaps person pick picture place plain plan play point possible power
  present pretty print probably problem properly public pull put puts question quick quickly quiet quite rate
  rather reach read ready real reason red remain remember rest result return ring room rule run safe said sale
  saw say says second see seem seems seen sell send sense serious serve set seven several shape share short
  shot shown show shows shut side sign simple since single sit six size slow small soft sold soon sorry sort
  sound speak special spend stand start started state stay stays step stood stop stopped stops straight
  strange strong sudden suggest summer sure surface table take taken takes taking talk teach team tell ten
  test time times themselves thick thin think third though thought thousand three through throughout thursday
  tiny tip told took top total touch toward town tried trouble true try trying tuesday turn turned turns twice
  two type under understand unless until usual usually various view visit wait walk wall warm watch wednesday
  monday friday saturday sunday week weekend weeks weird weight whatever whether whole wide win winter without
  woman wonder word words worked working works world worry worse worst write writing wrote year years young
  lunch dinner breakfast snack sandwich coffee tea juice salad fish dog dogs cat cats hair scarf clothes
  history person kitchen oven bought brought dropped shelf beer wine toilet`);

/** Words of other work in a pottery. They resemble the glaze room's, but the handbook does not cover them. */
export const otherTradeWords = setOf(`
  wheel throw throwing thrown wedge wedging trim trimming center centring centering centre coil coiling
  handbuilding handbuild membership fee fees price prices voucher vouchers buy sell sale shop parking park
  wifi password rent tax taxes insurance booking timetable hotel airport plane flight flights movie movies
  oscar king queen royal president football rugby soccer geometry flavour flavours flavor chocolate onion
  onions tomato tomatoes banana keys knit playstation computer laptop printer internet website homework essay
  poem song guitar haircut bank shopping supermarket taxi bicycle bike tyre lawn curtains carpet sofa bitcoin
  election government`);
