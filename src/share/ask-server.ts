// One request to a shop's server, bounded in time and size. Goes along with being sent to another path on the same
// server; refuses to be sent to another host, port or scheme, so that a token never leaves the one it is for.
import { cleanText } from '../core/clean-text.js';
import type { ShareFault } from '../core/share-fault.js';
import { ShareError } from './share-error.js';

export interface Question {
  readonly url: URL;
  readonly method: 'GET' | 'PUT';
  readonly headers?: Readonly<Record<string, string>>;
  /** Made anew for every time it is sent. */
  readonly body?: () => ReadableStream<Uint8Array>;
  readonly token: string | null;
  /** Bytes of the answer at most, after decompression. */
  readonly mostBytes: number;
  /** For everything, from asking to the last byte. */
  readonly patienceS: number;
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly bytes: Buffer;
}

const mostHops = 3;
const sendsOn = new Set([301, 302, 303, 307, 308]);

/** @throws ShareError for anything but a success or, where it was asked for, "not modified". */
export const askServer = async (question: Question): Promise<Answer> => {
  const signal = AbortSignal.timeout(Math.ceil(question.patienceS * 1000));
  let { url } = question;
  for (let hop = 0; hop <= mostHops; hop += 1) {
    const response = await send(question, url, signal);
    if (!sendsOn.has(response.status)) return await take(question, url, response);
    await response.body?.cancel();
    url = nextUrl(question, url, response);
  }
  throw new ShareError({ fault: 'sent-in-circles', at: shownUrl(question.url) });
};

const send = async (
  { method, headers, body, token, patienceS }: Question,
  url: URL,
  signal: AbortSignal,
): Promise<Response> => {
  if (token !== null && !isPrivateWay(url)) {
    throw new ShareError({ fault: 'token-in-clear', at: shownUrl(url) });
  }
  const authorization = token === null ? {} : { authorization: `Bearer ${token}` };
  const request: RequestInit = { method, redirect: 'manual', signal };
  try {
    return await fetch(url, {
      ...request,
      headers: { ...headers, ...authorization },
      ...(body === undefined ? {} : { body: body(), duplex: 'half' }),
    });
  } catch (error) {
    throw asShareError(error, url, patienceS);
  }
};

/** A token may go where nobody else can read along: encrypted, or not over any wire. */
const isPrivateWay = ({ protocol, hostname }: URL): boolean =>
  protocol === 'https:' || /^(?:localhost|127(?:\.\d{1,3}){3}|\[::1\])$/u.test(hostname);

const nextUrl = ({ method }: Question, url: URL, { status, headers }: Response): URL => {
  const location = headers.get('location') ?? '';
  const at = shownUrl(url);
  const next = URL.canParse(location, url.href) ? new URL(location, url) : null;
  const isKept = method === 'GET' || status === 307 || status === 308;
  if (next === null || next.origin !== url.origin || !isKept) {
    const to = next === null ? cleanText(location, 80) : shownUrl(next);
    throw new ShareError({ fault: 'sent-elsewhere', at, to });
  }
  return next;
};

const take = async (
  { mostBytes, patienceS }: Question,
  url: URL,
  { status, headers, body, ok }: Response,
): Promise<Answer> => {
  const at = shownUrl(url);
  if (!ok && status !== 304) {
    await body?.cancel().catch(() => undefined);
    throw new ShareError({ fault: 'answered', at, status }, retryAfter(headers));
  }
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    for await (const chunk of body ?? []) {
      size += chunk.length;
      // Leaving the loop closes the connection.
      if (size > mostBytes) throw new ShareError({ fault: 'too-large', at, mostBytes });
      chunks.push(chunk);
    }
  } catch (error) {
    throw error instanceof ShareError ? error : asShareError(error, url, patienceS, 'cut-short');
  }
  const told = headers.has('content-encoding') ? null : headers.get('content-length');
  if (told !== null && status !== 304 && Number(told) > size) {
    throw new ShareError({ fault: 'cut-short', at });
  }
  return { status, headers, bytes: Buffer.concat(chunks) };
};

/** The header's seconds; a date there is as good as nothing. */
const retryAfter = (headers: Headers): number | null => {
  const seconds = headers.get('retry-after') ?? '';
  return /^\d{1,6}$/u.test(seconds) ? Number(seconds) : null;
};

const asShareError = (
  error: unknown,
  url: URL,
  patienceS: number,
  otherwise: 'unreachable' | 'cut-short' = 'unreachable',
): ShareError => {
  const at = shownUrl(url);
  if ((error as Error).name === 'TimeoutError') {
    return new ShareError({ fault: 'too-slow', at, seconds: patienceS });
  }
  const found: ShareFault =
    otherwise === 'cut-short'
      ? { fault: 'cut-short', at }
      : { fault: 'unreachable', at, why: cleanText(causeOf(error), 120) };
  return new ShareError(found);
};

const causeOf = (error: unknown): string => {
  const { cause, message } = error as {
    cause?: { code?: unknown; message?: unknown };
    message?: unknown;
  };
  return String(cause?.code ?? cause?.message ?? message ?? error);
};

/** Without what follows the path, where secrets are sometimes put. */
export const shownUrl = ({ origin, pathname }: URL): string =>
  cleanText(`${origin}${pathname}`, 200);
