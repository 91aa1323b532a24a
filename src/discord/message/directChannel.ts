import { Routes, type APIDMChannel, type REST } from 'discord.js';

/** The channel of direct messages with somebody; opening it again gives the same one. */
export const directChannel = async (rest: REST, user: string): Promise<string> => {
  // What the platform documents for this route.
  const channel = (await rest.post(Routes.userChannels(), { body: { recipient_id: user } })) as APIDMChannel;
  return channel.id;
};
