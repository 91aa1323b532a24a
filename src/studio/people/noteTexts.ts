import type { StudioNote } from '../handbook.ts';

const sentenceSegmenter = new Intl.Segmenter('en', { granularity: 'sentence' });

/** The first sentence of a note, and the rest; the rest is empty when there is one sentence. */
export const firstSentence = (text: string): { first: string; rest: string } => {
  const [first = text] = Array.from(sentenceSegmenter.segment(text), ({ segment }) => segment);
  return { first: first.trim(), rest: text.slice(first.length).trim() };
};

/** A note's text cut for a list. */
export const shortNote = (text: string): string => (text.length > 120 ? `${text.slice(0, 119)}…` : text);

/** Every form in which answers repeat a note: whole, its first sentence, cut for a list. */
export const noteTexts = ({ title, text, words }: Pick<StudioNote, 'title' | 'text' | 'words'>): string[] => {
  const { first, rest } = firstSentence(text);
  return [title, text, words, first, rest, shortNote(text)].filter((one) => one !== '');
};
