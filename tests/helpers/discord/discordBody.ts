/** A request body, known only to be an object. */
export type Fields = Record<string, unknown>;

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const fields = (value: unknown): Fields => (isFields(value) ? value : {});
export const list = (value: unknown): Fields[] => (Array.isArray(value) ? value.filter(isFields) : []);
export const text = (value: unknown): string => (typeof value === 'string' ? value : '');

export interface SentFile {
  field: string;
  name: string;
  type: string;
  bytes: Uint8Array;
}

/** The JSON and files of a request. With files it is a multipart form. */
export const readBody = async (
  raw: Buffer,
  contentType: string,
): Promise<{ json: unknown; files: SentFile[] }> => {
  if (raw.length === 0) return { json: undefined, files: [] };
  if (!contentType.startsWith('multipart/form-data'))
    return { json: JSON.parse(raw.toString('utf8')), files: [] };
  const form = await new Response(raw, { headers: { 'content-type': contentType } }).formData();
  let json: unknown;
  const files: SentFile[] = [];
  for (const [field, value] of form) {
    if (typeof value === 'string') json = field === 'payload_json' ? JSON.parse(value) : json;
    else
      files.push({
        field,
        name: value.name,
        type: value.type,
        bytes: new Uint8Array(await value.arrayBuffer()),
      });
  }
  return { json, files };
};
