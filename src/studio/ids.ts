declare const id: unique symbol;
type Id<Of extends string> = string & { readonly [id]: Of };
type NumberOf<Of extends string> = number & { readonly [id]: Of };

export type StudioId = Id<'studio'>;
export type MemberId = Id<'member'>;
/** Milliseconds since 1970-01-01T00:00Z. */
export type Instant = NumberOf<'instant'>;
/** A span of time in milliseconds. */
export type Duration = NumberOf<'duration'>;
/** A stream of the logbook: a bucket's number from 1 up; 0 and below are the studio's own streams. */
export type StreamNo = NumberOf<'stream'>;
/** An entry's position in its stream, from 1 up. */
export type Seq = NumberOf<'seq'>;
/** An entry as people cite it, such as `7-41`: bucket 7, entry 41. */
export type EntryId = Id<'entry'>;

export type Role = 'member' | 'keeper';

export const studioId = (value: string) => value as StudioId;
export const memberId = (value: string) => value as MemberId;
export const instant = (value: number) => value as Instant;
export const duration = (value: number) => value as Duration;
export const streamNo = (value: number) => value as StreamNo;
export const seq = (value: number) => value as Seq;

/** Stands for all members at once: what is told to it is told in the studio's channel. */
export const everyone = memberId('everyone');

/** Writes what no member logged. No studio has a member of this id. */
export const theProgram = memberId('program');

export const studioStream = streamNo(0);
export const coatStream = streamNo(-1);
export const pieceStream = streamNo(-2);
export const firedStream = streamNo(-3);

export const minutes = (n: number) => duration(n * 60_000);
export const hours = (n: number) => duration(n * 3_600_000);
export const days = (n: number) => duration(n * 86_400_000);

export const later = (at: Instant, by: Duration): Instant => instant(at + by);
export const since = (earlier: Instant, at: Instant): Duration => duration(at - earlier);

const streamLetters: Record<string, StreamNo> = {
  s: studioStream,
  c: coatStream,
  p: pieceStream,
  f: firedStream,
};

export const entryId = (stream: StreamNo, at: Seq): EntryId => {
  const letter = Object.keys(streamLetters).find((key) => streamLetters[key] === stream);
  return `${letter ?? stream}-${at}` as EntryId;
};

/** The stream and seq in an entry id; undefined when the text is not an entry id. */
export const readEntryId = (typed: string): { stream: StreamNo; seq: Seq } | undefined => {
  const match = /^\s*([scpf]|[1-9]\d{0,8})-([1-9]\d{0,8})\s*$/i.exec(typed);
  const [, stream, place] = match ?? [];
  if (stream === undefined || place === undefined) return undefined;
  return { stream: streamLetters[stream.toLowerCase()] ?? streamNo(Number(stream)), seq: seq(Number(place)) };
};
