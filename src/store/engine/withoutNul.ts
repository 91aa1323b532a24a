/** Removes NUL characters, which other databases reject and nobody types on purpose. */
export const withoutNul = (text: string): string => (text.includes('\0') ? text.replaceAll('\0', '') : text);

/** The same for every string within a value. */
export const withoutNulWithin = <T>(value: T): T => {
  const json = JSON.stringify(value);
  if (json === undefined || !json.includes('\\u0000')) return value;
  return JSON.parse(json, (_, within: unknown) =>
    typeof within === 'string' ? withoutNul(within) : within,
  ) as T;
};
