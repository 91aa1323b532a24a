import { editDistance } from '../../../studio/editDistance.ts';

/** A word before a number, if it is “bucket” mistyped. */
const mended = (word: string): string =>
  /^b/i.test(word) && word.length > 4 && editDistance(word.toLowerCase(), 'bucket') <= 2 ? 'bucket' : word;

const units = String.raw`%|(?:ml|cc|l|ltr|lit\w*|gal\w*|g|gr\w*|kg|lbs?|oz|cups?|tsp|mm|cm|s|sec\w*|min\w*|h|hours?|days?)\b`;
const further = String.raw`\s*(?:,|\/|&|\bor\b|\band\b|\bvs\.?|\bversus\b)\s*(?:#|no\.? ?)?\d{1,4}(?![\d.,]*\d|\s*(?:${units}))`;
const several = new RegExp(String.raw`\b(?:buckets?|pails?|no\.?|nr\.?|#) ?(\d{1,4})((?:${further})+)`, 'gi');
const bare =
  /^\W*(?:which |use |is |should i use |dip in )?(\d{1,4}) (?:or|vs\.?|versus) (\d{1,4})(?: (?:better|best|ready|now))?\W*$/i;

/** “Bucket 4 or 5” names two buckets; a bare “4 or 5?” does too. */
export const spelledNumbers = (question: string): string => {
  const spelled = bare.test(question) ? question.replace(/\d{1,4}/g, 'bucket $&') : question;
  return spelled
    .replace(/\b([a-z]+)(?= ?\d{1,4}\b)/gi, mended)
    .replace(
      several,
      (_, first: string, rest: string) =>
        `bucket ${first}${rest.replace(/(?:#|no\.? ?)?(\d{1,4})/gi, ' bucket $1 ')}`,
    )
    .replace(/\bbuckets (\d)/gi, 'bucket $1');
};
