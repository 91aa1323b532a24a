/** “Bucket 4 or 5” names two buckets; a bare “4 or 5?” does too. */
export const spelledNumbers = (question: string): string => {
  const bare = /^\W*(?:which |use |should i use |dip in )?(\d{1,4}) (?:or|vs\.?|versus) (\d{1,4})\W*$/i.exec(
    question,
  );
  const spelled = bare ? question.replace(/\d{1,4}/g, 'bucket $&') : question;
  const pattern =
    /\b(buckets?|pails?|no\.?|nr\.?|#) ?(\d{1,4})((?:\s*(?:,|\/|&|\bor\b|\band\b|\bvs\.?|\bversus\b)\s*(?:#|no\.? ?)?\d{1,4}(?![\d.,]*\d|\s*(?:%|(?:ml|cc|l|ltr|lit\w*|gal\w*|g|gr\w*|kg|lbs?|oz|cups?|tsp|mm|cm|s|sec\w*|min\w*|h|hours?|days?)\b))(?:\s*[,?])?)+)/gi;
  return spelled
    .replace(
      pattern,
      (_, _word: string, first: string, rest: string) =>
        `bucket ${first}${rest.replace(/(?:#|no\.? ?)?(\d{1,4})/gi, ' bucket $1 ')}`,
    )
    .replace(/\bbuckets (\d)/gi, 'bucket $1');
};
