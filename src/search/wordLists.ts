/** The words of a text that is divided by spaces alone. */
export const wordsIn = (text: string): string[] => text.split(/\s+/).filter((word) => word !== '');

/** The word for each of its forms. If two words share a form, the first gets it. */
export const wordOfEachForm = (formsOf: Record<string, string>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(formsOf)
      .flatMap(([word, forms]) => wordsIn(forms).map((form) => [form, word] as const))
      .toReversed(),
  );
