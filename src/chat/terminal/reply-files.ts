import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Reply } from '#findings/reply.ts';

/**
 * Writes the files of a reply into `folder`, each in place of an earlier one of its name.
 *
 * @returns a line for each that says where it is, or why it is not there.
 */
export const keptFiles = (folder: string, { files = [] }: Reply): readonly string[] =>
  files.map(({ name, text }) => {
    // Names are ours, but a name is never a path.
    const path = join(folder, name.replace(/[^\w.-]/g, '_'));
    try {
      mkdirSync(folder, { recursive: true });
      writeFileSync(`${path}.part`, text);
      renameSync(`${path}.part`, path);
      return `File: ${path}`;
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : error;
      return `File: not kept, since ${folder} cannot be written (${code}).`;
    }
  });
