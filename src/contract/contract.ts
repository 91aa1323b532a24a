import type { Handbook } from '../studio/handbook.ts';
import type { Instant, MemberId, Role, StudioId } from '../studio/ids.ts';
import type { Json, Logbook, WritableLogbook } from '../studio/logbook/ports.ts';
import type { LabelPort } from './labelSheet.ts';
import type { Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';

/** Who asks, when, and what they may see. */
export interface Asking {
  studio: StudioId;
  member: MemberId;
  role: Role;
  /** The server's time. Codes, limits, undo and deadlines use it. */
  now: Instant;
  /** When the logged thing was done: before `now` if a phone was offline. */
  happenedAt: Instant;
  words: Words;
  book: Logbook;
  handbook: Handbook;
  /** Left out where nothing is printed. */
  labels?: LabelPort;
  /** Set in the demo, where anybody may act as this member. */
  guest?: true;
  /** The options as they were typed, to build further lines from. */
  typed: Record<string, string>;
}

export interface Logging extends Asking {
  book: WritableLogbook;
}

export interface Choice {
  name: string;
  value: string;
  /** What a person would type, if that differs from the value. */
  typed?: string;
}

/**
 * A parsed value, or why it could not be parsed. `choices`: several values match. `near`: none matches, but some are
 * similar. `more`: it is valid, but more text follows that belongs to another option.
 */
export type Read<T> =
  | { ok: true; value: T }
  | { ok: false; why: Text; choices?: Choice[]; near?: Choice[]; more?: { known: string; rest: string } };

/** The type of an option: how it is entered, parsed, printed and completed. */
export interface Kind<T> {
  control: 'text' | 'number' | 'switch' | { pick: Choice[] };
  /** Free text: a colon in it does not start another option. */
  prose?: true;
  /** This option says when the logged thing was done. */
  happened?: true;
  /** As sensitive as a password: never stored or shown again. */
  secret?: true;
  /** The most characters that are parsed; longer input is refused. 200 by default. */
  longest?: number;
  /** An example of what to type. */
  example: string;
  /** Units to switch between when it is entered as a number, the usual one first. */
  units?: readonly string[];
  /** Values other than a number, offered as buttons: a numeric keypad has no letters. */
  besides?: readonly Choice[];
  /** Only a button sets it: it is never asked for. */
  pressed?: true;
  read(typed: string, asking: Asking): Read<T> | Promise<Read<T>>;
  suggest?(typed: string, asking: Asking): Promise<Choice[]>;
}

export interface Option<T, Needed extends boolean = boolean> {
  kind: Kind<T>;
  needed: Needed;
  about: About;
}
export type Options = Record<string, Option<unknown>>;

/** `about` says what the option is, in the words that help and forms show. */
type About = (words: Words) => string;
export const needed = <T>(kind: Kind<T>, about: About) => ({ kind, needed: true, about }) as const;
export const optional = <T>(kind: Kind<T>, about: About) => ({ kind, needed: false, about }) as const;

type ValueOf<P> = P extends { kind: Kind<infer T> } ? T : never;
type NeededNames<O> = { [K in keyof O]: O[K] extends { needed: true } ? K : never }[keyof O];
/** The values that a leaf's `run` receives: needed options always, others only if they were typed. */
export type Values<O> = { [K in NeededNames<O>]: ValueOf<O[K]> } & {
  [K in Exclude<keyof O, NeededNames<O>>]?: ValueOf<O[K]>;
};

interface Spec<O, C, R = Reply> {
  name: string;
  about(words: Words): string;
  who: Role;
  options: O;
  /** At most five options, asked in a form when none is typed. */
  form?: (keyof O & string)[];
  /** May take long: platforms acknowledge first. */
  slow?: true;
  /** A slow read: an asking leaf gets its own snapshot, so that nobody else waits for it. */
  aside?: true;
  /** Pressed in a menu, it answers at once: its options only narrow the answer. */
  atOnce?: true;
  /** A logging leaf's reply is public unless this is set. */
  private?: true;
  run(values: Values<O>, context: C): Promise<R>;
}

/** What is written down after a question was answered. If that fails, the answer stays. */
export type Afterwards = (book: WritableLogbook) => Promise<void>;
export type AnswerAndAfterwards = Reply & { afterwards?: Afterwards };

type LeafOf<Effect, C, R> = Omit<Spec<Options, C>, 'run'> & {
  effect: Effect;
  run(values: never, context: C): Promise<R>;
};
/** A command that only reads: it sees a snapshot, and its reply is private. */
export type AskingLeaf = LeafOf<'asks', Asking, AnswerAndAfterwards>;
/** A command that logs: it runs in one transaction, and its reply is public. */
export type LoggingLeaf = LeafOf<'logs', Logging, Reply>;
export type Leaf = AskingLeaf | LoggingLeaf;

/** The options that people can type, without those that only buttons set. */
export const typedOptions = ({ options }: Pick<Leaf, 'options'>): string[] =>
  Object.entries(options).flatMap(([name, { kind }]) => (kind.pressed ? [] : [name]));

/** Whether a press in a menu answers at once: nothing is asked for, or what is asked for only narrows the answer. */
export const answersAtOnce = (leaf: Leaf): boolean =>
  leaf.effect === 'asks' && (leaf.atOnce === true || typedOptions(leaf).length === 0);

/** A top-level command: a leaf, or a name with leaves under it. */
export interface Group {
  name: string;
  about(words: Words): string;
  leaves: Leaf[];
}
export type Command = Leaf | Group;
export const isGroup = (command: Command): command is Group => 'leaves' in command;

export const asks = <const O extends Options>(spec: Spec<O, Asking, AnswerAndAfterwards>): AskingLeaf => ({
  ...spec,
  effect: 'asks',
});
export const logs = <const O extends Options>(spec: Spec<O, Logging>): LoggingLeaf => ({
  ...spec,
  effect: 'logs',
});

/** A command line offered as a button; with `edit` it is opened for changing first. */
export interface Action {
  label: Text;
  line: string;
  press: 'run' | 'edit';
}
export const toRun = (label: Text, line: string): Action => ({ label, line, press: 'run' });
export const toEdit = (label: Text, line: string): Action => ({ label, line, press: 'edit' });

/** A chart over time: points, marks and a band, in the units of its axis. */
export interface Chart {
  /** Instead of panels: a strip for each series, on one axis from then until then. */
  strips?: { from: Instant; until: Instant };
  title: string;
  alt: string;
  /** The legend. */
  key: string;
  zone: string;
  series: {
    label: string;
    unit: string;
    band?: { low: number; high: number };
    points: { at: Instant; value: number; u95?: number; believed: boolean }[];
    /** What a strip says beside its name. */
    note?: string;
  }[];
  marks: { at: Instant; label: string; kind: 'stir' | 'addition' | 'sieve' | 'hold' }[];
}

/** A file in a reply: a sheet to print, or an export. */
export interface ReplyFile {
  name: string;
  type: 'text/html' | 'text/csv' | 'application/json' | 'text/plain' | 'application/pdf';
  /** Plain characters, of a PDF too, so that every platform hands it on as it is. */
  content: string;
}

/** A long list: a platform shows the rows that fit, and a button for the rest. */
export interface More {
  of: 'facts' | 'reasons';
  label: Text;
  /** The lines that show the list from each of its rows on; the last one shows what follows the last row. */
  from: string[];
}

/** A measured value and its window, for a platform that draws them. */
export interface Scale {
  value: number;
  u95: number;
  believed: boolean;
  low: number;
  high: number;
  /** The value and the window in words: they stand on either side of the scale. */
  text: Text;
  window: Text;
  /** What stands under the value, in small letters: how old it is, or what it would be at room warmth. */
  under?: Text;
}

/** A short fact, or a row of a list with what can be pressed for it. */
export interface Fact {
  label: Text;
  text: Text;
  scale?: Scale;
  presses?: Action[];
}

export interface Reply {
  kind: 'answer' | 'choice' | 'refusal' | 'error';
  /** The answer in plain words. It must make sense alone, in a phone's notification. */
  title: Text;
  /** What was just logged, as the program understood it, so that a typing error shows. Shown right below the answer. */
  logged?: { entry: string; text: Text };
  facts?: Fact[];
  dont?: Text[];
  cautions?: Text[];
  reasons?: Text[];
  actions?: Action[];
  more?: More;
  chart?: Chart;
  file?: ReplyFile;
  private?: boolean;
  /** Shown once and not stored: it holds a secret, or a whole export. */
  fleeting?: true;
  /** Plain numbers in fixed units, for scripts. */
  data: { [key: string]: Json | undefined };
}

/** Nothing is done: the title says what was typed and what to do instead. Only whoever typed it sees that. */
export const refusal = (title: Text, data: Reply['data'] = {}): Reply => ({
  kind: 'refusal',
  title,
  data,
  private: true,
});
