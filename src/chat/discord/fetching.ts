/** Why a file was not fetched. */
export type FetchTrouble = 'gone' | 'too-large' | 'elsewhere' | 'unreachable' | 'busy';

/** Fetches a file somebody sent, of at most so many bytes. It never throws. */
export type FetchFile = (
  url: string,
  most: number,
) => Promise<{ readonly bytes: Uint8Array } | { readonly trouble: FetchTrouble }>;

/** Where the platform keeps what people send. Nothing is fetched from anywhere else. */
const platformHosts: readonly string[] = ['cdn.discordapp.com', 'media.discordapp.net'];

const loopback: readonly string[] = ['127.0.0.1', '[::1]', 'localhost'];

/** The place of a stand-in for the platform: only on this machine, and only where the settings name it. */
function standInOrigin(api: string | undefined): string | undefined {
  if (api === undefined || !URL.canParse(api)) return undefined;
  const { origin, hostname } = new URL(api);
  return loopback.includes(hostname) ? origin : undefined;
}

function mayFetch(url: string, standIn: string | undefined): boolean {
  if (!URL.canParse(url)) return false;
  const { protocol, hostname, port, username, password, origin } = new URL(url);
  if (username !== '' || password !== '') return false;
  if (standIn !== undefined && origin === standIn) return true;
  return protocol === 'https:' && port === '' && platformHosts.includes(hostname);
}

interface Bounds {
  /** Milliseconds from the first byte asked for to the last one had. */
  readonly patience: number;
  /** Fetched at the same time; with the most bytes of one, that bounds the memory taken. */
  readonly atOnce: number;
  readonly waiting: number;
}

const usual: Bounds = { patience: 20_000, atOnce: 2, waiting: 20 };

/**
 * Fetches what people send from the platform's own hosts, a few at a time, within bounds of time and size. A redirect is not
 * followed: it could lead anywhere.
 *
 * @param api Where the platform is, when the settings say so.
 */
export function fetching(api: string | undefined, bounds: Partial<Bounds> = {}): FetchFile {
  const { patience, atOnce, waiting: mostWaiting } = { ...usual, ...bounds };
  const standIn = standInOrigin(api);
  const waiting: (() => void)[] = [];
  let underWay = 0;

  const turn = async (): Promise<void> => {
    if (underWay < atOnce) underWay += 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
  };
  const done = (): void => {
    const next = waiting.shift();
    if (next) next();
    else underWay -= 1;
  };

  return async (url, most) => {
    if (!mayFetch(url, standIn)) return { trouble: 'elsewhere' };
    if (waiting.length >= mostWaiting) return { trouble: 'busy' };
    await turn();
    try {
      return await fetched(url, most, patience);
    } catch {
      // The address holds a signature, so the error that names it goes no further.
      return { trouble: 'unreachable' };
    } finally {
      done();
    }
  };
}

async function fetched(url: string, most: number, patience: number): ReturnType<FetchFile> {
  const enough = new AbortController();
  // A timer of our own: a signal that only the fetch knows may be collected as garbage before its time has run out.
  const timer = setTimeout(() => enough.abort(), patience);
  try {
    return await fetchedUntil(enough, url, most);
  } finally {
    clearTimeout(timer);
  }
}

async function fetchedUntil(enough: AbortController, url: string, most: number): ReturnType<FetchFile> {
  const { signal } = enough;
  const response = await fetch(url, { redirect: 'manual', signal, headers: { 'accept-encoding': 'identity' } });
  const trouble = troubleWith(response, most);
  if (trouble !== undefined) {
    enough.abort();
    return { trouble };
  }
  const pieces: Uint8Array[] = [];
  let size = 0;
  // What the answer says of its length is a claim; what comes is counted.
  for await (const piece of response.body ?? []) {
    size += piece.length;
    // Leaving the loop lets go of the line.
    if (size > most) return { trouble: 'too-large' };
    pieces.push(piece);
  }
  return { bytes: Buffer.concat(pieces) };
}

function troubleWith({ status, type, headers }: Response, most: number): FetchTrouble | undefined {
  if (type === 'opaqueredirect' || (status >= 300 && status < 400)) return 'elsewhere';
  if ([401, 403, 404, 410].includes(status)) return 'gone';
  if (status !== 200) return 'unreachable';
  return Number(headers.get('content-length') ?? 0) > most ? 'too-large' : undefined;
}
