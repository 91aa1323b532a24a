/** Removes NUL characters, which other databases reject and nobody types on purpose. */
export const withoutNul = (text: string): string => (text.includes('\0') ? text.replaceAll('\0', '') : text);

/** A value as it is stored, and its JSON, without NUL characters in any string within it. */
export const storedAs = <T>(value: T): { value: T; json: string } => {
  const json = JSON.stringify(value);
  if (json === undefined || !json.includes('\\u0000')) return { value, json };
  const clean = JSON.parse(json, (_, within: unknown) =>
    typeof within === 'string' ? withoutNul(within) : within,
  ) as T;
  return { value: clean, json: JSON.stringify(clean) };
};

/** A value without NUL characters in any string within it. */
export const withoutNulWithin = <T>(value: T): T => storedAs(value).value;
