import type { ChatInputCommandInteraction, ModalSubmitInteraction } from 'discord.js';
import type { Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';
import { fileWords } from '#words/files.ts';
import type { Action, KeptPhoto, Start } from '../command.ts';
import { acted, refusal } from '../desk.ts';
import type { Component } from './decision.ts';
import { deskOf, type House, languageOf } from './house.ts';
import { mayAttach } from './may-attach.ts';
import { mostBytes, type SentPhotos, tooLarge, type Upload } from './uploads.ts';

/** Something to be done at a desk. */
export interface Deed {
  readonly command: string;
  readonly action: Action;
  readonly given: Readonly<Record<string, string>>;
  /** Files that came with it, and are still to be fetched. */
  readonly uploads: readonly Upload[];
}

type Doer = ChatInputCommandInteraction | Component | ModalSubmitInteraction;

/** Does it, with the photos that lie in the channel by now. */
export const done = (
  house: House,
  store: ScopedStore,
  interaction: Doer,
  { deed: { action, given }, photos }: { readonly deed: Deed; readonly photos: SentPhotos },
): Reply | Start => acted(action, deskOf(house, store, interaction, photos), given);

/** What would come of it. Nothing is kept. */
export function triedOut(store: ScopedStore, work: () => Reply | Start): Reply | Start {
  class Enough extends Error {}
  let result: Reply | Start | undefined;
  try {
    return store.together(() => {
      result = work();
      throw new Enough();
    });
  } catch (error) {
    if (error instanceof Enough && result) return result;
    throw error;
  }
}

/** A photo of which nothing is known yet but that it was sent. */
const unseen = ({ id, size }: Upload): KeptPhoto => ({ reference: id, checksum: id, size, placed: false });

/** Why it would not be done, as far as that can be told before the files are fetched. */
export function refusedAtOnce(
  house: House,
  store: ScopedStore,
  interaction: ChatInputCommandInteraction | ModalSubmitInteraction,
  deed: Deed,
): string | undefined {
  const refused = refusal(deed.action, deskOf(house, store, interaction));
  if (refused !== undefined) return refused;
  const large = deed.uploads.find((upload) => upload.size > mostBytes(upload, interaction.attachmentSizeLimit));
  const language = languageOf(store, interaction);
  if (large) return tooLarge(large, language);
  const photos = deed.uploads.filter(({ kind }) => kind === 'photo');
  if (photos.length === 0) return undefined;
  if (!mayAttach(interaction)) return fileWords[language ?? 'english'].mayNotAttach;
  const sent = new Map(photos.map((upload) => [upload.id, unseen(upload)]));
  const reply = triedOut(store, () => done(house, store, interaction, { deed, photos: sent }));
  return 'refused' in reply && reply.refused ? reply.headline : undefined;
}
