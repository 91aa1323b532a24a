/** Text in the form in which texts are compared whose accents and punctuation matter: no capitals, single spaces. */
export const normalizedText = (text: string): string =>
  text.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
