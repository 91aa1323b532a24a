import { BotRoom } from '../bot/botRoom.ts';
import { Follower } from '../bot/follower.ts';
import { Phone } from '../bot/phone.ts';
import { Reader } from '../bot/reader.ts';
import type { Decider } from '../people/decider.ts';

/** This project's bot, obeyed to the letter. */
export const bot: Decider = {
  name: 'bot',
  writes: true,
  begin: async (room, score) => {
    const opened = await BotRoom.open(room);
    return {
      visit: (hands) => {
        const phone = new Phone(opened, score, hands);
        return new Follower(hands, phone, new Reader(hands, phone, room.settings)).follow();
      },
      toppedUp: async (done) => {
        await opened.night();
        for (const { bucket, ml, gravity } of done)
          await opened.must(
            `/added bucket:${bucket + 1} what:glaze amount:${ml.toFixed(0)}ml gravity:${gravity.toFixed(2)}`,
          );
      },
      close: () => opened.close(),
    };
  },
};
