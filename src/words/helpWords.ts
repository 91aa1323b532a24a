import { said, t, type Text } from './text.ts';

export const helpWords = {
  about: 'What to type, by job',
  which: 'A word of the job or command',
  title: ['What to type, by job. Least typing: weight, look, stirred:yes.'] as Text,
  nothing: (wanted: string): Text => t`Nothing fits “${said(wanted)}”. Here is everything.`,
  typing: [
    'Buckets go by name, nickname or number. Amounts as you say them: 350 ml, 1.5 gal, 3 tsp, 2 lb 3 oz. Times too: 2h ago, last night 9pm.',
  ] as Text,
  jobs: [
    { job: 'Water or stir?', line: '/water-or-stir bucket:gg', keeper: false },
    {
      job: 'Post a reading',
      line: '/reading bucket:gg weight:246.2g look:right stirred:yes',
      keeper: false,
    },
    { job: 'I added something', line: '/added bucket:gg what:water amount:450ml', keeper: false },
    { job: 'I stirred', line: '/stirred bucket:gg minutes:3', keeper: false },
    { job: 'I sieved', line: '/sieved bucket:gg mesh:80', keeper: false },
    { job: 'That was a slip', line: '/undo entry:7-41', keeper: false },
    { job: 'All buckets', line: '/bucket list', keeper: false },
    { job: 'One bucket', line: '/bucket show bucket:gg', keeper: false },
    { job: 'Who did what', line: '/bucket log bucket:gg', keeper: false },
    { job: 'Prepare a piece', line: '/prep piece:"tall jug" bucket:gg thickness:1mm', keeper: false },
    { job: 'How long to dip', line: '/dip time bucket:gg thickness:1mm', keeper: false },
    { job: 'Log a test tile', line: '/dip tile bucket:gg seconds:3 thickness:0.8mm', keeper: false },
    { job: 'Next flocculant dose', line: '/dose bucket:gg', keeper: false },
    { job: 'Bring a bucket into its window', line: '/batch correct bucket:gg by:water', keeper: false },
    {
      job: 'Plan a new batch',
      line: '/batch plan recipe:"feldspar 40, silica 30, whiting 30" volume:15l gravity:1.45',
      keeper: false,
    },
    { job: 'Pour two buckets together', line: '/batch blend first:gg second:7', keeper: false },
    {
      job: 'Keep a recipe',
      line: '/batch recipe name:"Gull Grey" recipe:"feldspar 40, silica 30, whiting 30"',
      keeper: true,
    },
    {
      job: 'Set a bucket up',
      line: '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4',
      keeper: true,
    },
    { job: 'Change a bucket', line: '/bucket change bucket:gg rest:4h', keeper: true },
    { job: 'Hold a bucket', line: '/bucket hold bucket:gg why:"frozen"', keeper: true },
    {
      job: 'Calibrate a weighing cup',
      line: '/studio vessel name:"steel cup" tare:85.4g water:100.2g',
      keeper: true,
    },
    { job: 'Name a flow cup', line: '/studio cup name:"hall cup" kind:ford4', keeper: true },
    { job: 'Zone and units', line: '/studio set zone:America/St_Johns units:metric', keeper: true },
  ],
};
