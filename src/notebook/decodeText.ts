export const encodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof encodings)[number];

export type Decoded =
  { ok: true; text: string } | { ok: false; why: 'archive' } | { ok: false; why: 'binary'; line: number };

const beginsWith = (bytes: Uint8Array, ...mark: number[]): boolean =>
  mark.every((byte, i) => bytes[i] === byte);

/** UTF-16 without a mark: in Western text every second byte is zero. */
const utf16Without = (bytes: Uint8Array): Encoding | undefined => {
  const zeros = [0, 0];
  const some = Math.min(bytes.length, 4096);
  for (let i = 0; i < some; i += 1) if (bytes[i] === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (odd > some / 4 && even < some / 20) return 'utf-16le';
  return even > some / 4 && odd < some / 20 ? 'utf-16be' : undefined;
};

const marked = (bytes: Uint8Array): Encoding | undefined => {
  if (beginsWith(bytes, 0xef, 0xbb, 0xbf)) return 'utf-8';
  if (beginsWith(bytes, 0xff, 0xfe)) return 'utf-16le';
  return beginsWith(bytes, 0xfe, 0xff) ? 'utf-16be' : utf16Without(bytes);
};

const decoded = (bytes: Uint8Array, encoding: Encoding): string | undefined => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

/** Control characters that no text contains, such as NUL. */
// oxlint-disable-next-line no-control-regex
const control = /[\u0000-\u0008\u000b\u000e-\u001f]/;

/** A file's text. Without a mark at its beginning it is UTF-8 if it can be, else Windows-1252, where any byte means something. */
export const decodeText = (bytes: Uint8Array, wanted?: Encoding): Decoded => {
  // What spreadsheet programs save as their own is a zip archive.
  if (beginsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) return { ok: false, why: 'archive' };
  const known = wanted ?? marked(bytes);
  const text = decoded(bytes, known ?? 'utf-8') ?? (known ? undefined : decoded(bytes, 'windows-1252'));
  if (text === undefined) return { ok: false, why: 'binary', line: 1 };
  const at = text.search(control);
  if (at < 0) return { ok: true, text };
  return { ok: false, why: 'binary', line: text.slice(0, at).split(/\r\n|\r|\n/).length };
};
