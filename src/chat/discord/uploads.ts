import type { Attachment, ChatInputCommandInteraction, ModalSubmitInteraction } from 'discord.js';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';
import type { KeptPhoto } from '../command.ts';
import { mostPhotoBytes } from '../photo-bytes.ts';
import type { FetchTrouble } from './fetching.ts';

/** A file somebody sent along. Its name and what it claims to be are not looked at. */
export interface Upload {
  /** What it is called among the things given: an option of its own, or a photo of a form. */
  readonly option: string;
  readonly id: string;
  readonly url: string;
  /** As the platform says it; what comes is counted all the same. */
  readonly size: number;
  readonly kind: 'photo' | 'text';
}

/** Photos that lie in a channel, by the id they were sent under. */
export type SentPhotos = ReadonlyMap<string, KeptPhoto>;

/** The most bytes of a list or another text: more than anybody keeps by hand. */
const mostTextBytes = 1_000_000;

export const mostBytes = ({ kind }: Upload, limit: number): number =>
  kind === 'photo' ? Math.min(mostPhotoBytes, limit) : mostTextBytes;

export const tooLarge = ({ kind }: Upload, language: Language = 'english'): string =>
  fileWords[language][kind === 'photo' ? 'tooLargePhoto' : 'tooLargeText'];

/** What went wrong with a file, and what would do. */
export const troubleWords = (upload: Upload, trouble: FetchTrouble, language: Language = 'english'): string =>
  trouble === 'too-large' ? tooLarge(upload, language) : fileWords[language][trouble];

const uploadOf = ({ id, url, size }: Attachment, option: string, kind: Upload['kind']): Upload => ({
  option,
  id,
  url,
  size,
  kind,
});

/** The file of a command's option. */
export function optionUpload(
  { options }: Pick<ChatInputCommandInteraction, 'options'>,
  { id, photo }: { readonly id: string; readonly photo?: true },
): readonly Upload[] {
  const sent = options.getAttachment(id);
  return sent ? [uploadOf(sent, id, photo ? 'photo' : 'text')] : [];
}

/** The photos of a form. */
export const formUploads = ({ fields }: ModalSubmitInteraction): readonly Upload[] =>
  [...fields.fields.values()].flatMap((field) =>
    'attachments' in field
      ? [...field.attachments.values()].map((sent) => uploadOf(sent, field.customId, 'photo'))
      : [],
  );

/** The text in a file, or a sentence why there is none. */
export function textIn(
  bytes: Uint8Array,
  language: Language = 'english',
): { readonly text: string } | { readonly rejected: string } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { rejected: fileWords[language].notText };
  }
}
