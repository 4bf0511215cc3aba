import words from '../../templates/serve.json' with { type: 'json' };
import type { IncomingMessage } from 'node:http';
import type { Refusal } from './sameOrigin.js';

export type Body = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly refusal: Refusal };

/**
 * Reads a JSON body. Anything but `application/json` is refused: a form or plain text can be sent here by any page
 * unasked.
 *
 * @param most the longest body taken, bytes
 */
export async function readJson(request: IncomingMessage, most: number): Promise<Body> {
  const [type] = (request.headers['content-type'] ?? '').split(';');
  if (type!.trim().toLowerCase() !== 'application/json') {
    return refused(415, 'Only application/json is taken.');
  }
  const tooLong = refused(413, `The message is too long: at most ${most} bytes.`);
  if (Number(request.headers['content-length'] ?? 0) > most) return tooLong;
  const parts: Buffer[] = [];
  let length = 0;
  try {
    for await (const part of request as AsyncIterable<Buffer>) {
      length += part.length;
      if (length > most) return tooLong;
      parts.push(part);
    }
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts))) };
  } catch {
    return refused(400, words.notWhole);
  }
}

function refused(status: number, why: string): Body {
  return { ok: false, refusal: { status, why } };
}
