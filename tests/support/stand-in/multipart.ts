/** A file that came with a request. */
export interface ReceivedFile {
  /** The form field: `files[0]`. */
  readonly field: string;
  readonly name: string;
  readonly contentType: string;
  readonly bytes: Uint8Array;
}

export interface ReceivedBody {
  readonly body: unknown;
  readonly files: readonly ReceivedFile[];
}

/** Reads the body of a request: plain JSON, or a form with the JSON in `payload_json` and the files beside it. */
export async function receivedBody(raw: Uint8Array<ArrayBuffer>, contentType: string): Promise<ReceivedBody> {
  if (raw.length === 0) return { body: undefined, files: [] };
  if (!contentType.startsWith('multipart/form-data')) {
    return { body: JSON.parse(new TextDecoder().decode(raw)), files: [] };
  }
  const form = await new Response(raw, { headers: { 'content-type': contentType } }).formData();
  const payload = form.get('payload_json');
  const files = [...form].flatMap(([field, value]) => (typeof value === 'string' ? [] : [{ field, value }]));
  return {
    body: typeof payload === 'string' ? JSON.parse(payload) : undefined,
    files: await Promise.all(
      files.map(async ({ field, value }) => ({
        field,
        name: value.name,
        contentType: value.type || 'application/octet-stream',
        bytes: new Uint8Array(await value.arrayBuffer()),
      })),
    ),
  };
}
