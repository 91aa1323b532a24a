import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { dayHours, weekday } from '../../src/contract/kinds/hours.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { name } from '../../src/contract/kinds/texts.ts';

const mostSessions = 40;

const isNamed = (name: string) => (session: { name: string }) =>
  session.name.toLowerCase() === name.toLowerCase();

export const setSession = logs({
  name: 'session',
  about: (w) => w.schedule.sessionAbout,
  who: 'keeper',
  options: {
    day: needed(weekday, (w) => w.schedule.sessionDay),
    hours: needed({ ...dayHours, example: '18:00-21:00' }, (w) => w.schedule.sessionHours),
    name: optional(name(40, 'beginners'), (w) => w.schedule.sessionName),
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const logged = stampNow({ now, member });
    const name = v.name ?? v.day;
    const { sessions } = await book.studio();
    if (v.hours === 'closed') {
      if (!sessions.some((one) => isNamed(name)(one) && one.day === v.day))
        return refusal(w.noSession(v.day));
      const { entry } = await book.logStudio({ kind: 'session-off', name }, logged);
      return { kind: 'answer', title: w.sessionOff(name), data: { entry: entry.id } };
    }
    if (sessions.filter((one) => !isNamed(name)(one)).length >= mostSessions)
      return refusal(w.tooManySessions(mostSessions));
    const session = { name, day: v.day, hours: v.hours };
    const { entry, state } = await book.logStudio({ kind: 'session', session }, logged);
    return {
      kind: 'answer',
      title: w.sessionSet(session),
      facts: [{ label: [w.factSessions], text: w.sessions(state.sessions) }],
      data: {
        entry: entry.id,
        sessions: state.sessions.map((one) => ({ name: one.name, day: one.day, hours: { ...one.hours } })),
      },
    };
  },
});
