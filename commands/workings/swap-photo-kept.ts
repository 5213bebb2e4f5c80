import type { Desk, KeptPhoto } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { standingPhotos } from '#walkthrough/walk.ts';
import { remark } from './plain-replies.ts';
import { enter } from './swap-entering.ts';
import { type OpenWalk, toldOf, type Walker } from './swap-walk.ts';

/** A photo that stands on its step now, the list with it, and what to say of it. */
export type Hung = { readonly walk: OpenWalk; readonly says: readonly Finding[] } | { readonly rejected: string };

/** The photos that stand on a step now. */
export const photosOn = ({ state }: OpenWalk, listed: ListedStep) => {
  const view = state.steps.get(listed.id);
  return view ? standingPhotos(view) : [];
};

/** What a step still asks for, photos that were sent already left out. */
export const partsLeft = (walk: OpenWalk, listed: ListedStep) =>
  listed.parts.filter(({ kind }) => kind !== 'photo' || photosOn(walk, listed).length === 0);

/** What to say of where it was taken. */
function ofPlace(walk: OpenWalk, { placed, unplaced }: KeptPhoto): readonly Finding[] {
  if (unplaced) {
    return [remark('photo-place', 'good', toldOf(walk).placeTakenOut)];
  }
  if (!placed) return [];
  return [remark('photo-place', 'caution', toldOf(walk).placeInFile)];
}

/**
 * Hangs a photo on a step: an event of its own, beside the answer. Where it lies and its checksum are kept, never the picture.
 * The same photo counts once.
 */
export function hung(
  desk: Desk,
  { walk, walker, shownAt }: { readonly walk: OpenWalk; readonly walker: Walker; readonly shownAt: number | null },
  listed: ListedStep,
  named: string,
): Hung {
  const photo = desk.photo(named);
  if ('rejected' in photo) return photo;
  const { reference, checksum, size } = photo.value;
  if (photosOn(walk, listed).some((each) => each.checksum === checksum)) {
    return { walk, says: [remark('photo', 'good', toldOf(walk).photoAgain)] };
  }
  const entry = { what: 'photo', step: listed, value: { reference, checksum, size }, shownAt };
  const entered = enter(desk, walk, walker, entry);
  if ('refused' in entered) return { rejected: entered.refused };
  desk.store.addPhoto(walk.sheet, {
    list: walk.list,
    step: listed.id,
    message: reference,
    checksum,
    size,
    who: walker.who,
  });
  return {
    walk: entered.walk,
    says: [remark('photo', 'good', toldOf(walk).photoHung(listed.title)), ...ofPlace(walk, photo.value)],
  };
}
