/** A file a person sends with a command or a form. */
export interface Upload {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the sender's program claims it is. */
  readonly contentType: string;
  /** How it is handed out; as it is, if not said. */
  readonly served?: Served;
  /** How large the platform says it is; its true size if not said. */
  readonly claimedSize?: number;
  /** The address the platform gives for it; where it really lies if not said. */
  readonly address?: string;
}

/** Ways in which a file that was sent is not there, not there any more, or not what it was said to be. */
export type Served =
  /** The address has run out. */
  | { readonly gone: true }
  /** Another address is named instead. */
  | { readonly redirect: string }
  /** So many bytes come, without a word on how many there will be. */
  | { readonly stream: number }
  /** Nothing comes, and the line stays open. */
  | { readonly hangs: true }
  /** The line is cut after the first bytes. */
  | { readonly breaks: true };

export const isUpload = (value: unknown): value is Upload =>
  typeof value === 'object' && value !== null && 'bytes' in value && 'contentType' in value;

/** A picture of one dot: the smallest file that really is a PNG. */
export const photo = (name = 'photo.png'): Upload => ({
  name,
  contentType: 'image/png',
  bytes: Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
});
