/** A file a person sends with a command or a form. */
export interface Upload {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the sender's program claims it is. */
  readonly contentType: string;
}

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
