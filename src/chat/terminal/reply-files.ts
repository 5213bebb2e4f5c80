import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Reply } from '#findings/reply.ts';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';

/**
 * Writes the files of a reply into `folder`, each in place of an earlier one of its name.
 *
 * @returns a line for each that says where it is, or why it is not there.
 */
export async function keptFiles(
  folder: string,
  { files = [], papers = [], language }: Reply,
): Promise<readonly string[]> {
  const lists = files.map(({ name, text }) => keptFile({ folder, language }, name, text));
  if (papers.length === 0) return lists;
  // Setting pages takes a while to load, so it is loaded when the first one is asked for.
  const { paperPdf } = await import('#pictures/paper-pdf.ts');
  const pages = papers.map(async ({ name, paper }) => keptFile({ folder, language }, name, await paperPdf(paper)));
  return [...lists, ...(await Promise.all(pages))];
}

function keptFile(
  { folder, language = 'english' }: { readonly folder: string; readonly language?: Language | undefined },
  name: string,
  content: string | Uint8Array,
): string {
  const { file, fileNotKept } = terminalWords[language];
  // Names are ours, but a name is never a path.
  const path = join(folder, name.replace(/[^\w.-]/g, '_'));
  try {
    mkdirSync(folder, { recursive: true });
    // Customers' names and addresses are in there: nobody else on the machine needs to read them.
    writeFileSync(`${path}.part`, content, { mode: 0o600 });
    renameSync(`${path}.part`, path);
    return file(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : error;
    return fileNotKept(folder, String(code));
  }
}
