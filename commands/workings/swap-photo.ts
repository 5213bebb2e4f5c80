import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { remark } from './plain-replies.ts';
import { type Given, kept, scene, stepOf } from './swap-answering.ts';
import { refusedReply } from './swap-entering.ts';
import { stepPage } from './swap-page.ts';
import { hung, partsLeft, photosOn } from './swap-photo-kept.ts';
import { toldOf } from './swap-walk.ts';

/** Hangs a photo on a step. Where the step asks for nothing else, that closes it, unless somebody has to sign. */
export function photoSent(desk: Desk, given: Given): Reply {
  const at = scene(desk, given);
  if ('rejected' in at) return refusedReply(at.rejected);
  const listed = stepOf(desk, at, given['step']);
  if ('rejected' in listed) return refusedReply(listed.rejected);
  const before = photosOn(at.walk, listed).length;
  const hanging = hung(desk, at, listed, given['file'] ?? '');
  if ('rejected' in hanging) return refusedReply(hanging.rejected);
  const { walk, says } = hanging;
  if (photosOn(walk, listed).length === before) return refusedReply(says.map((each) => each.says).join(' '));
  const page = (first: readonly Finding[]): Reply => stepPage(desk, { ...at, walk }, listed, first);
  const isOpen = walk.state.steps.get(listed.id)?.status !== 'closed';
  const asksOnlyThis = listed.parts.some(({ kind }) => kind === 'photo') && partsLeft(walk, listed).length === 0;
  if (!isOpen || !asksOnlyThis || listed.step.hold) return page(says);
  const entry = { what: 'done', step: listed, value: {} };
  const done = kept(desk, { ...at, walk }, entry, `${toldOf(walk).verb.done}: ${listed.title}.`);
  if (done.refused) {
    // The page says itself what comes first.
    const why = walk.state.steps.get(listed.id)?.waitsFor ? '' : done.headline;
    return page([...says, remark('still-open', 'caution', toldOf(walk).stepStaysOpen(why))]);
  }
  return { ...done, findings: [...says, ...done.findings] };
}

/** Takes back a photo: the newest of one's own on the step. */
export function photoTakenBack(desk: Desk, given: Given): Reply {
  const at = scene(desk, given);
  if ('rejected' in at) return refusedReply(at.rejected);
  const listed = stepOf(desk, at, given['step']);
  if ('rejected' in listed) return refusedReply(listed.rejected);
  const photos = at.walk.state.steps.get(listed.id)?.photos ?? [];
  const photo = photos.findLast(({ who }) => who === at.walker.who) ?? photos.at(-1);
  if (!photo) return refusedReply(toldOf(at.walk).noPhoto(listed.title));
  const entry = { what: 'photo-back', step: listed, value: { reference: photo.reference } };
  return kept(desk, at, entry, toldOf(at.walk).photoBack(listed.title));
}
