import type { ChatInputCommandInteraction, Message, ModalSubmitInteraction } from 'discord.js';
import type { Reply } from '#findings/reply.ts';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import { discordWords } from '#words/discord.ts';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';
import type { KeptPhoto, Start } from '../command.ts';
import { sheetTroubleText } from '../sheet-trouble-text.ts';
import { type BarePhoto, barePhoto } from './bare-photo/bare-photo.ts';
import { deskDecision } from './desk-pressing.ts';
import { type Deed, done, triedOut } from './doing.ts';
import { clipped, harmless } from './harmless.ts';
import { languageOf, whoOf } from './house.ts';
import { loggable } from './log.ts';
import { type Telling, tell } from './telling.ts';
import { limits } from './text.ts';
import { mostBytes, type SentPhotos, textIn, troubleWords, type Upload } from './uploads.ts';

/** What files come with. */
type Sender = ChatInputCommandInteraction | ModalSubmitInteraction;

type Taking = Omit<Telling, 'interaction'> & { readonly interaction: Sender };

/** The language of whoever sent it. */
const languageIn = ({ store, interaction }: Taking): Language => languageOf(store, interaction) ?? 'english';

/** A photo that was fetched, looked at and bared of what was written beside the picture. */
interface Fetched {
  readonly upload: Upload;
  readonly photo: BarePhoto;
}

/** It ends here, and this is said. */
class Ended extends Error {
  override readonly name = 'Ended';
}

/**
 * Does something that files came with. The platform is told at once that it will take a moment; then the files are fetched
 * and looked at, photos are put into the channel as messages of their own, where they stay, and only then is it done. Until
 * then nothing is recorded, so that whatever goes wrong on the way leaves all as it was.
 */
export async function take(taking: Taking, deed: Deed): Promise<void> {
  const { interaction } = taking;
  if (interaction.isModalSubmit() && interaction.isFromMessage()) await interaction.deferUpdate();
  else await interaction.deferReply();
  try {
    await taken(taking, deed);
  } catch (error) {
    if (!(error instanceof Ended || error instanceof SheetTrouble)) throw error;
    const says = error instanceof SheetTrouble ? sheetTroubleText(error, languageIn(taking)) : error.message;
    await tell(taking, { does: 'say', text: clipped(harmless(says), limits.content) });
  }
}

/** Whether a form was opened from a message, which then changes. */
const isInPlace = (interaction: Sender): boolean => interaction.isModalSubmit() && interaction.isFromMessage();

async function taken(taking: Taking, given: Deed): Promise<void> {
  const { interaction, house, store } = taking;
  const { photos, deed } = await fetchedFor(taking, given);
  const attempt = (sent: SentPhotos) => done(house, store, interaction, { deed, photos: sent });
  if (photos.length > 0)
    await house.gather(store, () =>
      unrefused(
        taking,
        triedOut(store, () => attempt(waitingFor(photos))),
      ),
    );
  const reply = await withPosted(taking, photos, (sent) => house.gather(store, () => unrefused(taking, attempt(sent))));
  const where = isInPlace(interaction) ? 'in place' : 'new';
  await tell(taking, deskDecision(deed.command, reply, where, false));
}

/** Puts the photos into the channel for the work to rest on; where it fails they are taken away again. */
async function withPosted(
  taking: Taking,
  photos: readonly Fetched[],
  work: (sent: SentPhotos) => Promise<Reply>,
): Promise<Reply> {
  const messages: Message[] = [];
  const sent = new Map<string, KeptPhoto>();
  try {
    for (const { upload, photo } of photos) {
      const { message, reference } = await posted(taking, photo);
      messages.push(message);
      sent.set(upload.id, { ...photo.found, reference });
    }
    return await work(sent);
  } catch (error) {
    for (const message of messages) await removed(taking, message);
    throw error;
  }
}

/** The reply, where there is one to show. @throws Ended */
function unrefused(taking: Taking, reply: Reply | Start): Reply {
  if ('start' in reply) throw new Ended(discordWords[languageIn(taking)].askedWith(reply.start));
  if (reply.refused) throw new Ended(reply.headline);
  return reply;
}

/** Photos before they lie anywhere. */
const waitingFor = (photos: readonly Fetched[]): SentPhotos =>
  new Map(photos.map(({ upload, photo }) => [upload.id, { ...photo.found, reference: upload.id }]));

/** The photos, and the deed with the text of each file in its place. @throws Ended */
async function fetchedFor(
  taking: Taking,
  deed: Deed,
): Promise<{ readonly photos: readonly Fetched[]; readonly deed: Deed }> {
  const { house, interaction } = taking;
  const language = languageIn(taking);
  const ended = ({ kind }: Upload, says: string): string =>
    kind === 'photo' ? fileWords[language].nothingRecorded(says) : says;
  const photos: Fetched[] = [];
  const texts: Record<string, string> = {};
  for (const upload of deed.uploads) {
    const fetched = await house.fetchFile(upload.url, mostBytes(upload, interaction.attachmentSizeLimit));
    if ('trouble' in fetched) throw new Ended(ended(upload, troubleWords(upload, fetched.trouble, language)));
    const { bytes } = fetched;
    if (upload.kind === 'text') {
      const read = textIn(bytes, language);
      if ('rejected' in read) throw new Ended(read.rejected);
      texts[upload.option] = read.text;
      continue;
    }
    const photo = barePhoto(bytes, language);
    if ('rejected' in photo) throw new Ended(ended(upload, photo.rejected));
    photos.push({ upload, photo: photo.value });
  }
  return { photos, deed: { ...deed, given: { ...deed.given, ...texts } } };
}

/** Puts a photo into the channel, under a name of ours, in a message nobody's press changes. @throws Ended */
async function posted(taking: Taking, { bytes, found }: BarePhoto) {
  const { interaction, log } = taking;
  const { photoFrom, photoForStep, notTakenIn } = fileWords[languageIn(taking)];
  const picture = {
    content: photoFrom(whoOf(interaction)),
    files: [
      {
        attachment: bytes,
        name: `photo.${found.kind}`,
        description: photoForStep,
      },
    ],
  };
  try {
    const message = isInPlace(interaction) ? await interaction.followUp(picture) : await interaction.editReply(picture);
    const lies = message.attachments.first()?.id;
    if (lies === undefined) throw new Error('the platform took a photo and says nothing of it');
    return { message, reference: [interaction.guildId, message.channelId, message.id, lies].join('/') };
  } catch (error) {
    log('warn', 'a photo could not be put into the channel', loggable(error));
    throw new Ended(notTakenIn);
  }
}

/** Takes a photo out of the channel that was not recorded after all. */
async function removed(taking: Taking, message: Message): Promise<void> {
  const { interaction, log } = taking;
  const gone = isInPlace(interaction)
    ? interaction.deleteReply(message)
    : interaction.editReply({ content: fileWords[languageIn(taking)].notRecorded, attachments: [], files: [] });
  await gone.then(
    () => {},
    (error: unknown) => log('warn', 'a photo that was not recorded could not be taken away', loggable(error)),
  );
}
