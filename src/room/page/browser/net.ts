/** The result of a request: an answer, or a refusal. Its status is 0 if no answer came. */
export type Answer<T> =
  | { ok: true; value: T }
  | { ok: false; status: number; said: string; why?: string | undefined; seconds?: number | undefined };

const read = async <T>(request: Promise<Response>): Promise<Answer<T>> => {
  try {
    const response = await request;
    const body: unknown = await response.json();
    // The server has the same version as this page, so its JSON matches wire.ts.
    if (response.ok) return { ok: true, value: body as T };
    const { said = '', why } = body as { said?: string; why?: string };
    const seconds = Number(response.headers.get('retry-after')) || undefined;
    return { ok: false, status: response.status, said, why, seconds };
  } catch {
    return { ok: false, status: 0, said: '' };
  }
};

export const get = <T>(path: string, headers: Record<string, string> = {}): Promise<Answer<T>> =>
  read(fetch(path, { headers, signal: AbortSignal.timeout(15_000) }));

export const post = <T>(path: string, body: object): Promise<Answer<T>> =>
  read(
    fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(15_000),
    }),
  );

/** A unique id. `randomUUID` is missing on plain http. */
export const freshId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
