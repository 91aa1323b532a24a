import type { Handbook } from '../studio/handbook.ts';
import type { Instant, MemberId, Role, Seq, StudioId } from '../studio/ids.ts';
import type { Json, Logbook, WritableLogbook } from '../studio/logbook/ports.ts';
import type { Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';

/** Who asks, when, and what they may see. */
export interface Asking {
  studio: StudioId;
  member: MemberId;
  role: Role;
  /** The server's time: codes, limits, undo and deadlines go by it. */
  now: Instant;
  /** When what is logged was done: earlier than now when a phone could not send its line at once. */
  happenedAt: Instant;
  words: Words;
  book: Logbook;
  handbook: Handbook;
  /** Anybody may say that they are this member: the demo, where nothing is real. */
  guest?: true;
  /** The options as they were typed, for the lines of a choice. */
  typed: Record<string, string>;
}

export interface Logging extends Asking {
  book: WritableLogbook;
}

export interface Choice {
  name: string;
  value: string;
  /** What a person would type for it, when that is not the value itself. */
  typed?: string;
}

/**
 * An option's value, or why what was typed is not one; `choices` when it could be several, `near` when it is none but like
 * some, `more` when it is one with something after it that has another place.
 */
export type Read<T> =
  | { ok: true; value: T }
  | { ok: false; why: Text; choices?: Choice[]; near?: Choice[]; more?: { known: string; rest: string } };

/** What an option takes: how it is entered, read, printed and completed. */
export interface Kind<T> {
  control: 'text' | 'number' | 'switch' | { pick: Choice[] };
  /** Prose: a colon in it begins no option. */
  prose?: true;
  /** It says when what is logged was done. */
  happened?: true;
  /** An example of what to type. */
  example: string;
  /** Units to switch between when it is entered as a number, the usual one first. */
  units?: readonly string[];
  /** What it may be besides a number: to be pressed, since a pad of digits has no letters. */
  besides?: readonly Choice[];
  /** Said by a press only: nobody is asked for it. */
  pressed?: true;
  read(typed: string, asking: Asking): Read<T> | Promise<Read<T>>;
  suggest?(typed: string, asking: Asking): Promise<Choice[]>;
}

export interface Option<T, Needed extends boolean = boolean> {
  kind: Kind<T>;
  needed: Needed;
  about(words: Words): string;
}
export type Options = Record<string, Option<unknown>>;

type ValueOf<P> = P extends { kind: Kind<infer T> } ? T : never;
type NeededNames<O> = { [K in keyof O]: O[K] extends { needed: true } ? K : never }[keyof O];
/** What a leaf's run is given: needed options always, the others when they were typed. */
export type Values<O> = { [K in NeededNames<O>]: ValueOf<O[K]> } & {
  [K in Exclude<keyof O, NeededNames<O>>]?: ValueOf<O[K]>;
};

interface Spec<O, C> {
  name: string;
  about(words: Words): string;
  who: Role;
  options: O;
  /** At most five options, asked in a form when none is typed. */
  form?: (keyof O & string)[];
  /** May take more than a moment: platforms acknowledge first. */
  slow?: true;
  /** Reads more than others should wait for: a leaf that asks then has a snapshot of its own. */
  aside?: true;
  /** The reply of a leaf that logs is public unless this says that it stays between bot and member. */
  private?: true;
  run(values: Values<O>, context: C): Promise<Reply>;
}

/** A command that only asks: it sees a snapshot, and its reply is private. */
export type AskingLeaf = Omit<Spec<Options, Asking>, 'run'> & {
  effect: 'asks';
  run(values: never, context: Asking): Promise<Reply>;
};
/** A command that logs: it runs in one transaction, and its reply is public. */
export type LoggingLeaf = Omit<Spec<Options, Logging>, 'run'> & {
  effect: 'logs';
  run(values: never, context: Logging): Promise<Reply>;
};
export type Leaf = AskingLeaf | LoggingLeaf;

/** The options that people say: those that only a press says are left out. */
export const typedOptions = ({ options }: Pick<Leaf, 'options'>): string[] =>
  Object.entries(options).flatMap(([name, { kind }]) => (kind.pressed ? [] : [name]));

/** A top-level command: a leaf, or a name with leaves under it. */
export interface Group {
  name: string;
  about(words: Words): string;
  leaves: Leaf[];
}
export type Command = Leaf | Group;
export const isGroup = (command: Command): command is Group => 'leaves' in command;

export const asks = <const O extends Options>(spec: Spec<O, Asking>): AskingLeaf => ({
  ...spec,
  effect: 'asks',
});
export const logs = <const O extends Options>(spec: Spec<O, Logging>): LoggingLeaf => ({
  ...spec,
  effect: 'logs',
});

/** A command line that somebody can press instead of typing; `edit` puts it up for changing first. */
export interface Action {
  label: Text;
  line: string;
  press: 'run' | 'edit';
}

/** A line over time, for a picture: points, marks and a band, in the units of its axis. */
export interface Chart {
  title: string;
  alt: string;
  /** What the shapes mean. */
  key: string;
  zone: string;
  series: {
    label: string;
    unit: string;
    band?: { low: number; high: number };
    points: { at: Instant; value: number; u95?: number; believed: boolean }[];
  }[];
  marks: { at: Instant; label: string; kind: 'stir' | 'addition' | 'sieve' | 'hold' }[];
}

/** A file to hand over: a sheet to print, an export. */
export interface ReplyFile {
  name: string;
  type: 'text/html' | 'text/csv' | 'application/json' | 'text/plain';
  content: string;
}

/** A list of which a platform may show a part: it shows the rows that fit, and offers the rest from there. */
export interface More {
  of: 'facts' | 'reasons';
  label: Text;
  /** The line that shows the list from each of its rows on; one more where it goes on after the last. */
  from: string[];
}

export interface Reply {
  kind: 'answer' | 'choice' | 'refusal' | 'error';
  /** The answer, in plain words; it stands alone in a phone's notification. */
  title: Text;
  /** What was just logged, as it was understood, so that a slip shows; said right under the answer. */
  logged?: { entry: string; text: Text };
  facts?: { label: Text; text: Text }[];
  dont?: Text[];
  cautions?: Text[];
  reasons?: Text[];
  actions?: Action[];
  more?: More;
  chart?: Chart;
  file?: ReplyFile;
  private?: boolean;
  /** Shown once and kept nowhere: it holds a secret, or all that there is. */
  fleeting?: true;
  /** Plain numbers in fixed units, for scripts. */
  data: { [key: string]: Json | undefined };
}

/** One command from one member on some platform. */
export interface Request {
  /** The platform's own id of it: a repeat gets the same reply and logs nothing. */
  key: string;
  studio: StudioId;
  member: MemberId;
  role: Role;
  /** The server's time, never a phone's. */
  now: Instant;
  /** When what is said was done; now unless somebody says so. Only entries go by it. */
  happenedAt?: Instant;
  /** The command's name, and its leaf's when it is a group. */
  path: string[];
  typed: Record<string, string>;
  /** Anybody may say that they are this member. */
  guest?: true;
  /** The bucket's last entry when an action was offered. */
  after?: Seq;
}

export interface Desk {
  commands: Command[];
  dispatch(request: Request): Promise<Reply>;
  suggest(request: Request, option: string): Promise<Choice[]>;
}

/** How a reminder is spoken on a platform. */
export interface Voice {
  speak(
    studio: StudioId,
    to: MemberId,
    reply: Reply,
    nonce: string,
  ): Promise<'said' | 'not-mine' | 'closed' | 'gone' | 'later' | 'unsure'>;
}
