import { monitorWords } from '../words/platform/monitorWords.ts';

const partNames = ['store', 'discord', 'room', 'reminders'] as const;
type Part = (typeof partNames)[number];

/** Looks at one part: whether it works, or is switched off. */
export type Look = () => boolean | 'off' | Promise<boolean | 'off'>;

export interface Health {
  ready: boolean;
  parts: Record<Part, 'ok' | 'off' | 'wrong'>;
  /** What is wrong, in sentences. */
  wrong: string[];
}

/** A logbook that takes longer than this to answer is of no use to anybody at a bucket. */
const longest = 2_000;

const within = (working: Promise<boolean | 'off'>): Promise<boolean | 'off'> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, longest, false);
    working.then(resolve, () => resolve(false)).finally(() => clearTimeout(timer));
  });

const stateOf = async (look: Look): Promise<'ok' | 'off' | 'wrong'> => {
  const is = await within((async () => look())());
  if (is === 'off') return 'off';
  return is ? 'ok' : 'wrong';
};

/** Asks every part of the program how it is. */
export const lookAfter = async (looks: Record<Part, Look>): Promise<Health> => {
  const [store, discord, room, reminders] = await Promise.all([
    stateOf(looks.store),
    stateOf(looks.discord),
    stateOf(looks.room),
    stateOf(looks.reminders),
  ]);
  const parts = { store, discord, room, reminders };
  const wrong = partNames.filter((part) => parts[part] === 'wrong').map((part) => monitorWords.wrong[part]);
  return { ready: wrong.length === 0, parts, wrong };
};
