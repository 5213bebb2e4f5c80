import { readFileSync, statSync } from 'node:fs';
import type { Reading } from '#interview/question.ts';
import { clipped } from '../options.ts';

/** More than any list somebody keeps by hand. */
const mostBytes = 1_000_000;

/** What is in a text file somebody named, or a sentence why it cannot be had. */
export function textOfFile(path: string): Reading<string> {
  const name = `“${clipped(path.trim())}”`;
  try {
    const found = statSync(path.trim());
    if (!found.isFile()) return { rejected: `${name} is not a file. Name a text file.` };
    if (found.size > mostBytes) return { rejected: `${name} is larger than 1 MB. Name a smaller file.` };
    const text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path.trim()));
    return { value: text };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA') {
      return { rejected: `${name} is not text in UTF-8. Save it as text or CSV UTF-8.` };
    }
    return {
      rejected:
        code === 'ENOENT'
          ? `There is no file ${name}. Give its path.`
          : `The file ${name} cannot be read. Give another.`,
    };
  }
}
