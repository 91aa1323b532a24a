/** What whoever runs the bot reads. */
export const mainWords = {
  usage: 'usage: npm start [-- [--lan] [--new-keys]]',
  nothingOn: 'ROOM=off and no DISCORD_TOKEN: there is nothing to start',
  connected: 'connected to Discord',
  roomWithoutDiscord: (why: string) => `${why} The room goes on without Discord until the next start.`,
  roomTroubled: 'The room could not be opened. I keep trying.',
  stray: 'something went wrong that nobody handled; everything else goes on',
};
