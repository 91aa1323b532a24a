/** What whoever runs the bot reads. */
export const mainWords = {
  usage: 'npm start',
  connected: 'connected to Discord',
};
