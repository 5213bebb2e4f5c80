import { PassThrough, Writable } from 'node:stream';

/** An output that keeps what is written to it. */
export function kept(more: { readonly columns?: number; readonly isTTY?: boolean } = {}) {
  let text = '';
  const output = new Writable({
    write(chunk, _, done) {
      text += String(chunk);
      done();
    },
  });
  return Object.assign(output, more, { text: () => text });
}

/** An input that gives some lines and ends. */
export function piped(...lines: readonly string[]): PassThrough {
  const input = new PassThrough();
  input.end(lines.map((line) => `${line}\n`).join(''));
  return input;
}
