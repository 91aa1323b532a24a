/** What the room's server and its page exchange. Plain values only, so that each side compiles alone. */

/** A piece of text: the program's own, typed by somebody, a time, or a member. The page decides how it looks. */
export type WirePart =
  | string
  | { said: string }
  | { at: number; show: 'ago' | 'clock' | 'day' }
  | { member: string; name: string };
export type WireText = WirePart[];

export interface WireAction {
  label: WireText;
  press: 'run' | 'edit';
  line: string;
  /** The same line split into options, to fill a form. */
  path: string[];
  typed: Record<string, string>;
}

/** A measured value on the scale of its window, with both in words. */
export interface WireScale {
  value: number;
  u95: number;
  believed: boolean;
  low: number;
  high: number;
  text: WireText;
  window: WireText;
  under?: WireText;
}

export interface WireReply {
  kind: 'answer' | 'choice' | 'refusal' | 'error';
  title: WireText;
  /** What was logged, as the program understood it, with the undo button. */
  logged?: { entry: string; text: WireText; undo?: WireAction };
  tookBack?: string[];
  /** What the verdict says to do, if it is a verdict. */
  step?: string;
  stepName?: string;
  bucket?: number;
  facts: { label: WireText; text: WireText; scale?: WireScale; presses?: WireAction[] }[];
  dont: WireText[];
  cautions: WireText[];
  reasons: WireText[];
  actions: WireAction[];
  chart?: string;
  file?: string;
  /** Goes with the request for the file. */
  fileKey?: string;
  /** Shown once: whoever else opens the post sees only that. */
  once?: true;
}

export interface Did {
  path: string[];
  typed: Record<string, string>;
}

export interface WirePost {
  no: number;
  /** The idempotency key that the phone gave it. */
  id: string;
  at: number;
  member: string;
  name: string;
  line: string;
  /** The same line as options, with buckets by name; missing if it is no command. */
  did?: Did;
  private: boolean;
  reply: WireReply;
}

export interface WireOption {
  name: string;
  about: string;
  needed: boolean;
  control: 'text' | 'number' | 'switch' | { pick: { name: string; value: string }[] };
  example: string;
  units?: readonly string[];
  /** Values other than a number. */
  besides?: readonly { name: string; value: string }[];
  suggests: boolean;
}

export interface WireLeaf {
  path: string[];
  about: string;
  who: 'member' | 'keeper';
  effect: 'asks' | 'logs';
  /** A press answers it at once, without a form. */
  atOnce?: true;
  options: WireOption[];
  /** The options of the short form. */
  form: string[];
}

/** What only a keeper can tell of an old notebook, with what they can answer. */
export interface WireNotebookQuestion {
  ask: string;
  of: 'column' | 'dates' | 'decimal' | 'bucket' | 'newBuckets';
  column?: string;
  choices: { name: string; value: string }[];
}

/** What an old notebook would become, or became. */
export interface WireNotebook {
  said: string;
  questions: WireNotebookQuestion[];
  /** Lines that can't be read, and why. */
  refused: string[];
  /** What the first lines become, and how many more there are. */
  becomes: string[];
  more: number;
  about: string[];
  /** All of it can be brought in. */
  fits: boolean;
  /** The number under which it was brought in, and can be taken back. */
  no?: number;
}

export interface WireBucket {
  no: number;
  name: string;
  step: string;
  /** The state in two words. */
  stepName: string;
  /** What the bucket needs, in a sentence. */
  needs: WireText;
  gravity: { value: number; u95: number; believed: boolean } | null;
  window: { low: number; high: number } | null;
  stirredAt: number | undefined;
}

export interface WireBoard {
  studio: string;
  now: number;
  zone: string;
  buckets: WireBucket[];
}

export interface WireMe {
  member: string;
  name: string;
  keeper: boolean;
}

/** A first step of a new studio. */
export type WireStep = 'zone' | 'cup' | 'bucket' | 'invite';

export interface WireStudio {
  studio: string;
  /** The studio's zone: times are shown in it, because typed times are read in it. */
  zone: string;
  /** No bucket has been set up yet. */
  bare?: boolean;
  /** A keeper's first steps and whether each is done, while one is not. */
  steps?: Record<WireStep, boolean>;
}

export interface WireStart extends WireStudio {
  /** No passwords: the demo. */
  open: boolean;
  now: number;
  me?: WireMe;
  commands: WireLeaf[];
  posts: WirePost[];
}
