import { said, t, type Text } from '../text/text.ts';

/** What to type for a job; a keeper’s own is shown to keepers. */
interface Job {
  job: string;
  line: string;
  keeper?: true;
}

export const helpWords = {
  about: 'What to type, by job',
  which: 'A word from the job or the command',
  title: t`What to type, by job. Your own words will do too: gull grey 1.46 13 sec stirred.`,
  nothing: (wanted: string): Text => t`Nothing matches “${said(wanted)}”. Here is everything.`,
  typing: t`Name a bucket by its name, nickname or number. Type amounts and times the way you say them: 350 ml, 1.5 gal, 3 tsp, 2 lb 3 oz; 2h ago, last night 9pm.`,
  jobs: [
    { job: 'Water or stir?', line: '/water-or-stir bucket:gg' },
    { job: 'Log a reading', line: '/reading bucket:gg weight:246.2g look:right stirred:yes' },
    { job: 'I added something', line: '/added bucket:gg what:water amount:450ml' },
    { job: 'I stirred', line: '/stirred bucket:gg minutes:3' },
    { job: 'I sieved', line: '/sieved bucket:gg mesh:80' },
    { job: 'I put wax, latex or tape on', line: '/coat on kind:wax pieces:"3 bowls" for:"tonight 7pm"' },
    { job: 'Are my coats dry?', line: '/coat list' },
    { job: 'A coat has come off', line: '/coat off coat:c-12 how:peeled' },
    { job: 'Tell me when to look again', line: '/remind me bucket:gg in:10min' },
    { job: 'My reminders', line: '/remind list' },
    { job: 'Undo an entry', line: '/undo entry:7-41' },
    { job: 'Say it in your own words', line: '/say gull grey 1.46 13 sec stirred' },
    { job: 'A glaze-room question', line: '/ask question:"why is my glaze pinholing"' },
    { job: 'What there is to do', line: '/round' },
    { job: 'All buckets', line: '/bucket list' },
    { job: 'One bucket', line: '/bucket show bucket:gg' },
    { job: 'Who did what', line: '/bucket log bucket:gg' },
    { job: 'Prepare a piece', line: '/prep piece:"tall jug" bucket:gg thickness:1mm' },
    { job: 'How long to dip', line: '/dip time bucket:gg thickness:1mm' },
    { job: 'Log a test tile', line: '/dip tile bucket:gg seconds:3 thickness:0.8mm' },
    {
      job: 'How it came out of the kiln',
      line: '/fired bucket:gg result:crawling pieces:"2 of 4" dipped:"3 days ago"',
    },
    { job: 'Habits and faults', line: '/faults bucket:gg', keeper: true },
    { job: 'Next flocculant dose', line: '/dose bucket:gg' },
    { job: 'Bring a bucket into its window', line: '/batch correct bucket:gg by:water' },
    {
      job: 'Plan a new batch',
      line: '/batch plan recipe:"feldspar 44, silica 31, whiting 25" volume:15l gravity:1.45',
    },
    { job: 'Mix two buckets', line: '/batch blend first:gg second:7' },
    {
      job: 'Keep a recipe',
      line: '/batch recipe name:"Gull Grey" recipe:"feldspar 44, silica 31, whiting 25"',
      keeper: true,
    },
    { job: 'Describe a material', line: '/studio material name:"moon dust" like:kaolin', keeper: true },
    {
      job: 'Describe several materials',
      line: '/studio materials list:"moon dust: like kaolin; black stain: cobalt, not soluble, 4.2"',
      keeper: true,
    },
    {
      job: 'Write a studio note',
      line: '/note add title:"Where the cookies are" text:"Clay cookies are on the shelf by the kiln door."',
      keeper: true,
    },
    {
      job: 'Set a bucket up',
      line: '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4',
      keeper: true,
    },
    { job: 'Change a bucket', line: '/bucket change bucket:gg rest:4h', keeper: true },
    { job: 'Print labels for the lids', line: '/bucket labels paper:a4', keeper: true },
    { job: 'Hold a bucket', line: '/bucket hold bucket:gg why:"frozen"', keeper: true },
    {
      job: 'Calibrate a weighing cup',
      line: '/studio vessel name:"steel cup" tare:85.4g water:100.2g',
      keeper: true,
    },
    { job: 'Name a flow cup', line: '/studio cup name:"hall cup" kind:ford4', keeper: true },
    {
      job: 'Opening hours and days off',
      line: '/studio hours daily:08:00-22:00 sunday:closed closed:2026-12-25',
      keeper: true,
    },
    { job: 'A weekly glazing session', line: '/studio session day:tuesday hours:18:00-21:00', keeper: true },
    { job: 'The round every morning', line: '/studio morning at:07:30', keeper: true },
    { job: 'Questions nobody could answer', line: '/note questions', keeper: true },
    { job: 'When reminders come', line: '/studio reminders lead:45min quiet:22:00-08:00', keeper: true },
    { job: 'The next firing', line: '/studio firing when:"friday 8am"', keeper: true },
    { job: 'Link your two accounts', line: '/link' },
    { job: 'Make the bot forget me', line: '/forget-me' },
    { job: 'Take a note out for good', line: '/redact entry:7-41', keeper: true },
    { job: 'Export the data', line: '/export as:csv bucket:gg', keeper: true },
    { job: 'Time zone and units', line: '/studio set zone:America/St_Johns units:metric', keeper: true },
  ] as Job[],
};
