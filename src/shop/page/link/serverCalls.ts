/** What came back: an answer, a refusal with the server's words, or silence. */
export type Call<T> =
  | { readonly kind: 'answer'; readonly value: T }
  | { readonly kind: 'refusal'; readonly status: number; readonly why: string }
  | { readonly kind: 'silence' };

/** How long the page waits for an answer before it counts as silence, ms. */
const PATIENCE = 20_000;

/** Asks the server for something, or sends it something. */
export async function call<T>(path: string, token: string | undefined, body?: unknown): Promise<Call<T>> {
  const request: RequestInit = {
    method: body === undefined ? 'GET' : 'POST',
    headers: {
      ...(token === undefined ? {} : { Authorization: `Bearer ${token}` }),
      ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
    },
    signal: AbortSignal.timeout(PATIENCE),
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  };
  try {
    const response = await fetch(path, request);
    if (response.ok) return { kind: 'answer', value: (await response.json()) as T };
    const { error } = (await response.json()) as { error: string };
    return { kind: 'refusal', status: response.status, why: error };
  } catch {
    return { kind: 'silence' };
  }
}

/** Fetches a file as an object URL, for pictures and downloads: an address alone would go without the token. */
export async function fetchFile(path: string, token: string): Promise<string | undefined> {
  try {
    const response = await fetch(path, { headers: { Authorization: `Bearer ${token}` } });
    return response.ok ? URL.createObjectURL(await response.blob()) : undefined;
  } catch {
    return undefined;
  }
}
