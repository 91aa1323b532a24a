import type { Reply } from '../contract/contract.ts';
import type { Voice } from '../contract/desk.ts';

export const terminalVoice = (
  who: { studio: Parameters<Voice['speak']>[0]; member: Parameters<Voice['speak']>[1] },
  print: (reply: Reply) => Promise<void>,
): Voice => ({
  async speak(studio, to, reply) {
    if (studio !== who.studio || to !== who.member) return 'not-mine';
    await print(reply);
    return 'said';
  },
});
