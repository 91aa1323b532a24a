/** What came back: the answer, a refusal that another try will not change, or nothing for now. */
export type Answer<T> =
  | { ok: true; value: T }
  | { ok: false; status: number; said: string; seconds?: number }
  | { ok: false; status: 0; said: '' };

const read = async <T>(request: Promise<Response>): Promise<Answer<T>> => {
  try {
    const response = await request;
    const body: unknown = await response.json();
    // The server is ours and of the same version: its answers are what wire.ts says.
    if (response.ok) return { ok: true, value: body as T };
    const said =
      typeof body === 'object' && body !== null && 'said' in body && typeof body.said === 'string'
        ? body.said
        : '';
    const seconds = Number(response.headers.get('retry-after'));
    return { ok: false, status: response.status, said, ...(seconds > 0 && { seconds }) };
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

/** An id that no other line has; `randomUUID` is not there on a plain http address. */
export const freshId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
