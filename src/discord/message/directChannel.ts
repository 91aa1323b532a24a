import { Routes, type APIDMChannel, type REST } from 'discord.js';

/** The direct-message channel with a user. Opening it again returns the same one. */
export const directChannel = async (rest: REST, user: string): Promise<string> => {
  // The response type that Discord documents for this route.
  const channel = (await rest.post(Routes.userChannels(), { body: { recipient_id: user } })) as APIDMChannel;
  return channel.id;
};
