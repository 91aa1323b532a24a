import { monitorWords } from '../words/platform/monitorWords.ts';

const parts = ['store', 'discord', 'room', 'reminders'] as const;
type Part = (typeof parts)[number];

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

/** Asks every part of the program how it is. */
export const lookAfter = async (looks: Record<Part, Look>): Promise<Health> => {
  const found = await Promise.all(
    parts.map(async (part) => ({ part, is: await within((async () => looks[part]())()) })),
  );
  const state = (is: boolean | 'off') => (is === 'off' ? 'off' : is ? 'ok' : 'wrong');
  const [store, discord, room, reminders] = found.map(({ is }) => state(is));
  const wrong = found.filter(({ is }) => is === false).map(({ part }) => monitorWords.wrong[part]);
  return {
    ready: wrong.length === 0,
    parts: {
      store: store ?? 'wrong',
      discord: discord ?? 'wrong',
      room: room ?? 'wrong',
      reminders: reminders ?? 'wrong',
    },
    wrong,
  };
};
