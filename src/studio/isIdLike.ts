/** Whether a name could be read as the id of a member: ids are UUIDs (RFC 9562), however they are spaced. */
export const isIdLike = (name: string): boolean =>
  /^[0-9a-f]{32}$/i.test(name.normalize('NFKC').replace(/[^\p{L}\p{N}]+/gu, ''));
