import { type BaseInteraction, PermissionFlagsBits } from 'discord.js';
import type { ScopedStore, Store } from '#store/store.ts';
import { discordWords } from '#words/discord.ts';
import { type Language, languageMeant } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import { crewLanguage } from '../answers.ts';
import type { AnswerCommand, Command, Desk, Speaker } from '../command.ts';
import { deskFor, wordsAreNoPhoto } from '../desk.ts';
import type { ChartPictures } from './chart-pictures.ts';
import type { FetchFile } from './fetching.ts';
import type { Gathering } from './gathering.ts';
import type { Pace } from './pace.ts';
import type { TypedBefore } from './typed-before.ts';
import type { SentPhotos } from './uploads.ts';

/** What the Discord side works with. */
export interface House extends Gathering {
  readonly store: Store;
  readonly commands: readonly Command[];
  readonly pictures: ChartPictures;
  readonly typed: TypedBefore;
  /** The way every file somebody sends is fetched. */
  readonly fetchFile: FetchFile;
  /** Milliseconds an answer waits for its chart; after that it goes without, and the chart is put in when it is there. */
  readonly patience: number;
  /** How fast one person may go. */
  readonly pace: Pace;
}

/** The platform gives three seconds; half of it is left for the way there and back. */
export const usualPatience = 1500;

export const whoOf = ({ user }: Pick<BaseInteraction, 'user'>): string => `<@${user.id}>`;

type Saying = Pick<BaseInteraction, 'user' | 'channelId' | 'locale'>;

/** The language of that person's own platform, where it is one of ours; else the crew's. */
export const languageOf = (store: ScopedStore, { locale }: Pick<Saying, 'locale'>): Language | undefined =>
  languageMeant(locale) ?? crewLanguage(store);

/** What Discord has to say to that person, in their language. */
export const wordsFor = (store: ScopedStore, interaction: Pick<Saying, 'locale'>) =>
  discordWords[languageOf(store, interaction) ?? 'english'];

export const speakerOf = (store: ScopedStore, interaction: Saying): Speaker => ({
  channel: interaction.channelId ?? 'direct',
  who: whoOf(interaction),
  language: languageOf(store, interaction),
});

export const deskOf = (
  { commands }: House,
  store: ScopedStore,
  interaction: Saying & Pick<BaseInteraction, 'memberPermissions'>,
  photos: SentPhotos = new Map(),
): Desk =>
  deskFor({
    store: () => store,
    recordsOpen: () => true,
    speaker: speakerOf(store, interaction),
    commands,
    photo(named) {
      const sent = photos.get(named);
      return sent ? { value: sent } : wordsAreNoPhoto(speakerOf(store, interaction));
    },
    mayManage: interaction.memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false,
  });

export const answering = ({ commands }: House): readonly AnswerCommand<unknown>[] =>
  commands.filter((command) => command.kind === 'answer');

/** The job a talk is about, as it stands on a message. */
export function jobOf(store: ScopedStore, talk: string, language: Language = 'english'): string | undefined {
  const number = store.talk(talk)?.sheet;
  const sheet = number === undefined ? undefined : store.findSheet(number);
  return sheet && standing[language].job(sheet.number, sheet.name);
}

/** The records of each crew, at hand once they were asked for. */
export function crewRecords(store: Store): (guild: string) => ScopedStore {
  const known = new Map<string, ScopedStore>();
  return (guild) => {
    const records = known.get(guild) ?? store.scoped(guild);
    known.set(guild, records);
    return records;
  };
}
