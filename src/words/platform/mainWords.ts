/** What whoever runs the bot reads. */
export const mainWords = {
  usage: 'usage: npm start [-- [--lan] [--new-keys]]',
  nothingOn: 'ROOM=off and no DISCORD_TOKEN: there is nothing to start',
  connected: 'connected to Discord',
};
