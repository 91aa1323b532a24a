/** What only Discord needs saying. */
export const discordWords = {
  yes: 'yes',
  no: 'no',
  shortened: 'There is more than fits here.',
  noPicture: 'The picture could not be drawn. The numbers above are right.',
  fileTooLarge: 'The file is too large to send here. A keeper can make it on the studio’s own machine.',
  broken: (id: string) =>
    `Something went wrong here. It was not your fault, and nothing was saved. Give a keeper this number: ${id}.`,
  tooOld: 'This button is too old to use. Please type the command instead.',
  changed: 'This command has changed. Please type / to see the commands.',
  /** In a message's own menu; at most 32 characters. */
  logMessage: 'Log as a reading',
  fromBot: 'A bot wrote that message, so it says nothing new. Choose a message that somebody wrote.',
  picture:
    'I can’t read pictures. Type what it shows, such as: /say gull grey 1.46 13 sec stirred. Nothing was logged.',
  noWords:
    'That message has no words that I can read. Type what you measured, such as: /say gull grey 1.46 13 sec stirred. Nothing was logged.',
  serverOnly: 'Please use this in your studio’s server.',
  notAdmitted:
    'This bot is not set up for this server. Whoever runs it can add the server to DISCORD_SERVERS.',
  notOnServer: 'This button is for members of the studio’s server, and you are not on it any more.',
  pick: 'Choose one',
  suchAs: (about: string, example: string) => `${about}, such as ${example}`,
  problem: {
    token: 'Discord refuses the token in DISCORD_TOKEN. Make a new one in Discord’s developer portal.',
    unreachable: 'Discord cannot be reached from this machine. I will keep trying.',
    ended: 'Discord ended the connection. I will keep trying.',
  },
  notConnected: 'Could not connect to Discord. I will keep trying.',
  lateReply: 'My reply came too late, but this was logged:',
};
