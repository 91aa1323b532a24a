/** What whoever runs the bot reads. */
export const mainWords = {
  usage: 'usage: npm start [-- [--lan] [--new-keys]]',
  nothingOn: 'ROOM is off and DISCORD_TOKEN is not set, so there is nothing to start',
  connected: 'connected to Discord',
  roomWithoutDiscord: (why: string) => `${why} The room keeps running without Discord until the next start.`,
  roomTroubled: 'The room could not be opened. I will keep trying.',
  notStopped: 'a part of the program did not stop as it should',
  leftBehind: 'a part of the program took too long to stop, and was left behind',
  notWarm: 'a part of the program could not be loaded ahead of its first use',
  refolded: 'the states of an earlier release were worked out again',
  notRefolded:
    'the states of an earlier release could not all be worked out again; each is when it is needed',
  notLearned: 'the buckets of some studios could not learn from each other today; I will try again',
  stray: 'an unexpected error; everything else keeps running',
};
