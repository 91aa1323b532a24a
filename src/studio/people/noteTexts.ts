import type { StudioNote } from '../handbook.ts';

const sentences = new Intl.Segmenter('en', { granularity: 'sentence' });

/** The first sentence stands alone; a note of one long sentence has no more. */
export const firstSentence = (text: string): { first: string; rest: string } => {
  const [first = text] = Array.from(sentences.segment(text), ({ segment }) => segment);
  return { first: first.trim(), rest: text.slice(first.length).trim() };
};

/** A note's text as it stands in a list. */
export const shortNote = (text: string): string => (text.length > 120 ? `${text.slice(0, 119)}…` : text);

/** Every way in which answers repeat what a note says: whole, by its first sentence, cut for a list. */
export const noteTexts = ({ title, text, words }: Pick<StudioNote, 'title' | 'text' | 'words'>): string[] => {
  const { first, rest } = firstSentence(text);
  return [title, text, words, first, rest, shortNote(text)].filter((one) => one !== '');
};
