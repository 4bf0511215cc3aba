/** One message of the stream: its name and its data. */
export interface Message {
  readonly name: string;
  readonly data: unknown;
}

/** Without a sign of life for this long the connection counts as lost, ms. The server gives one every 5 s. */
const SILENCE = 12_000;

/**
 * Listens to the server's changes until the connection is lost (text/event-stream, WHATWG HTML, section 9.2, read by
 * hand: the browser's own reader cannot send the token).
 *
 * @param heard called for each message, and once at the beginning with none
 * @returns the status the server refused with, or 0 where the connection was lost
 */
export async function listen(
  path: string,
  token: string,
  heard: (message: Message | undefined) => void,
  stop: AbortSignal,
): Promise<number> {
  if (stop.aborted) return 0;
  const quiet = new AbortController();
  const give = () => quiet.abort();
  stop.addEventListener('abort', give);
  let timer = setTimeout(give, SILENCE);
  try {
    const response = await fetch(path, { headers: { Authorization: `Bearer ${token}` }, signal: quiet.signal });
    if (!response.ok || !response.body) return response.status;
    heard(undefined);
    const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
    let text = '';
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return 0;
      clearTimeout(timer);
      timer = setTimeout(give, SILENCE);
      const parts = (text + value).split('\n\n');
      text = parts.pop()!;
      for (const part of parts) {
        const message = messageOf(part);
        if (message) heard(message);
      }
    }
  } catch {
    return 0;
  } finally {
    clearTimeout(timer);
    stop.removeEventListener('abort', give);
  }
}

/** Reads one message; lines that are no message (a waiting time, a comment) give nothing. */
export function messageOf(part: string): Message | undefined {
  const field = (name: string) =>
    part
      .split('\n')
      .find((line) => line.startsWith(`${name}: `))
      ?.slice(name.length + 2);
  const [name, data] = [field('event'), field('data')];
  return name === undefined || data === undefined ? undefined : { name, data: JSON.parse(data) };
}
