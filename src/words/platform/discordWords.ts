/** What only Discord needs saying. */
export const discordWords = {
  yes: 'yes',
  no: 'no',
  shortened: 'There was more than fits here.',
  noPicture: 'The picture could not be drawn; the figures above stand.',
  fileTooLarge: 'The file is too large to send here. Your keeper can make it on the studio’s own machine.',
  broken: (id: string) =>
    `Something went wrong on my side, and nothing was changed. If you tell your keeper, say ${id}.`,
  tooOld: 'This button is too old to use. Please type the command instead.',
  changed: 'This command is not what it was. Please type / to see what there is.',
  serverOnly: 'Please use this in your studio’s server.',
  pick: 'Choose one',
  suchAs: (about: string, example: string) => `${about}, such as ${example}`,
  problem: {
    token: 'Discord refuses the token in DISCORD_TOKEN. Its developer portal makes a new one.',
    unreachable: 'Discord cannot be reached from this machine. I keep trying.',
    ended: 'Discord ended the connection. I keep trying.',
  },
  notConnected: 'Could not connect to Discord. I keep trying.',
  lateReply: 'My reply came too late, but this was logged:',
};
