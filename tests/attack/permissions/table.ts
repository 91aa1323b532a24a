/** Who may run a line at least. A guest is somebody whom the studio does not know: not signed in, or not on its server. */
export interface Row {
  /** The command that the row is about. */
  command: string;
  line: string;
  least: 'member' | 'keeper';
}

const row = (command: string, least: Row['least'], options: string): Row => ({
  command,
  line: `/${command}${options === '' ? '' : ` ${options}`}`,
  least,
});

/**
 * What stands in the studio before anybody tries the rows. Tove, a keeper, says it. Bucket 4 is held; Tove’s coat and
 * note are another member’s to everybody else.
 */
export const prepared: readonly string[] = [
  ...['Gull Grey', 'Gorse', 'Lichen', 'Heron', 'Sandbar'].map(
    (name) =>
      `/bucket add name:"${name}" pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6`,
  ),
  '/studio vessel name:"steel cup" tare:85.4g water:100.2g',
  '/reading bucket:1 gravity:1.50 seconds:20 stirred:yes',
  '/reading bucket:2 gravity:1.44 seconds:14 stirred:yes note:"a drip on the lid"',
  '/batch recipe name:"house clear" recipe:"silica 30, kaolin 20, whiting 20, potash feldspar 30"',
  '/note add title:"Sinks" text:"Use the left sink for glaze."',
  '/note add title:"Sieves" text:"Rinse a sieve before it dries."',
  '/bucket hold bucket:4 why:"lumps"',
  '/coat on kind:latex pieces:"Tove’s bowls"',
  '/prep piece:"tall jug" bucket:2',
];

/** Each command, with a line that works in that studio. A command without a row fails the test. */
export const rows: readonly Row[] = [
  row('water-or-stir', 'member', 'bucket:1'),
  row('reading', 'member', 'bucket:1 gravity:1.45 seconds:14 stirred:yes'),
  row('added', 'member', 'bucket:1 what:water amount:200ml'),
  row('stirred', 'member', 'bucket:1 minutes:3'),
  row('sieved', 'member', 'bucket:1 mesh:80'),
  row('undo', 'member', 'entry:1-6'),
  row('say', 'member', 'words:"gull grey 1.46 13 sec stirred"'),
  row('ask', 'member', 'question:"why does a glaze crawl?"'),
  row('coat on', 'member', 'kind:wax pieces:"3 bowls"'),
  row('coat list', 'member', ''),
  row('coat off', 'member', 'coat:c-2'),
  row('remind list', 'member', ''),
  row('remind me', 'member', 'bucket:1 in:"10 min"'),
  row('remind later', 'member', 'reminder:asked-1 for:"2 h"'),
  row('remind not-mine', 'member', 'reminder:asked-1'),
  row('remind done', 'member', 'reminder:asked-1'),
  row('remind by', 'member', 'way:channel'),
  row('prep', 'member', 'piece:"small cup" bucket:2'),
  row('dose', 'member', 'bucket:2'),
  row('dip tile', 'member', 'bucket:2 seconds:3 thickness:0.8mm'),
  row('dip tile', 'member', 'bucket:2 seconds:6 thickness:1.2mm'),
  row('dip tile', 'member', 'bucket:2 seconds:1 thickness:0.4mm'),
  row('dip time', 'member', 'bucket:2 thickness:1mm'),
  row('dip absorption', 'member', 'dry:100g saturated:112g'),
  row('fired', 'member', 'bucket:2 result:good pieces:4'),
  row('faults', 'keeper', ''),
  row('batch correct', 'member', 'bucket:1 by:water'),
  row(
    'batch plan',
    'member',
    'recipe:"silica 30, kaolin 20, whiting 20, potash feldspar 30" volume:5l gravity:1.45',
  ),
  row('batch blend', 'member', 'first:1 second:2'),
  row('batch recipes', 'member', ''),
  row('batch recipe', 'keeper', 'name:"second clear" recipe:"silica 50, kaolin 50"'),
  row('round', 'member', ''),
  row('bucket list', 'member', ''),
  row('bucket show', 'member', 'bucket:1'),
  row('bucket log', 'member', 'bucket:1'),
  row('bucket add', 'keeper', 'name:"Plover"'),
  row('bucket change', 'keeper', 'bucket:3 name:"Lichen Green"'),
  row('bucket labels', 'keeper', 'paper:a4 code:no'),
  row('bucket hold', 'keeper', 'bucket:3 why:"lumps"'),
  row('bucket release', 'keeper', 'bucket:4'),
  row('bucket retire', 'keeper', 'bucket:5'),
  row('note list', 'member', ''),
  row('note add', 'keeper', 'title:"Aprons" text:"Hang them up."'),
  row('note change', 'keeper', 'note:1 text:"Use either sink."'),
  row('note remove', 'keeper', 'note:2'),
  row('note questions', 'keeper', ''),
  row('note wanted', 'member', 'question:"how long may frozen glaze thaw in the yard?"'),
  row('note answered', 'keeper', 'question:1'),
  row('studio show', 'member', ''),
  row('studio set', 'keeper', 'units:us'),
  row('studio hours', 'keeper', 'monday:08:00-22:00'),
  row('studio session', 'keeper', 'day:tuesday hours:18:00-21:00'),
  row('studio drying', 'keeper', 'hours:"12 h"'),
  row('studio reminders', 'keeper', 'quiet:22:00-07:00'),
  row('studio morning', 'keeper', 'at:07:30'),
  row('studio firing', 'keeper', 'when:"tomorrow 9am"'),
  row('studio material', 'keeper', 'name:"river mud" like:kaolin'),
  row('studio materials', 'keeper', 'list:"dune sand: like silica"'),
  row('studio vessel', 'keeper', 'name:"tin cup" tare:40g water:90g'),
  row('studio cup', 'keeper', 'name:"hall cup" kind:ford4'),
  row('forget-me', 'member', 'sure:no'),
  row('studio keeper', 'keeper', 'member:Mara is:keeper'),
  row('redact', 'keeper', 'entry:2-2'),
  row('export', 'keeper', 'as:json'),
  row('link', 'member', ''),
  row('help', 'member', ''),
];

/** Within a command that every member may use: what is another’s, or a keeper’s, all the same. */
export const finer: readonly Row[] = [
  row('undo', 'keeper', 'entry:2-2'),
  row('coat off', 'keeper', 'coat:c-1'),
  row('prep', 'keeper', 'piece:p-1 done:dust'),
];
