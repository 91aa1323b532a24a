/** What goes between the room's server and its page; plain values only, so that both sides compile alone. */

/** A piece of text: ours, what somebody typed, a moment, a member. The page decides how each looks. */
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
  /** The same line taken apart, to fill a form with. */
  path: string[];
  typed: Record<string, string>;
}

export interface WireReply {
  kind: 'answer' | 'choice' | 'refusal' | 'error';
  title: WireText;
  /** What was logged, as it was understood, and the press that takes it back. */
  logged?: { text: WireText; undo?: WireAction };
  /** What to do with the bucket, when the reply says. */
  step?: string;
  stepName?: string;
  facts: { label: WireText; text: WireText }[];
  dont: WireText[];
  cautions: WireText[];
  reasons: WireText[];
  actions: WireAction[];
  /** What its picture shows. */
  chart?: string;
  file?: string;
}

/** One thing said in the room and what was answered. */
export interface WirePost {
  no: number;
  /** The id that the phone gave it. */
  id: string;
  at: number;
  member: string;
  name: string;
  line: string;
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
  /** What it may be besides a number. */
  besides?: readonly { name: string; value: string }[];
  suggests: boolean;
}

export interface WireLeaf {
  path: string[];
  about: string;
  who: 'member' | 'keeper';
  effect: 'asks' | 'logs';
  options: WireOption[];
  /** The options that a short form asks for. */
  form: string[];
}

export interface WireBucket {
  no: number;
  name: string;
  step: string;
  /** The state in two words. */
  stepName: string;
  /** What it needs, in a sentence. */
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

/** What a phone starts from. */
export interface WireStart {
  studio: string;
  /** Free of passwords: the demo. */
  open: boolean;
  now: number;
  /** The studio's: times are shown in it, because they are read in it. */
  zone: string;
  me?: WireMe;
  /** Nobody has set a bucket up yet. */
  bare?: boolean;
  commands: WireLeaf[];
  posts: WirePost[];
}
