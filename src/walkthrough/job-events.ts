import type { BoxKind, WalkFactId } from '#knowledge/checklist-facts.ts';
import { accepted, type Judgement, type Moment, refused, sameAgain } from './judgement.ts';
import { lapse, relist } from './reopening.ts';
import { eitherOf, isLead, maySign } from './signing.ts';
import { isClosed, recordOf, standingPhotos, type Walk } from './walk.ts';
import { nameOf, words } from './walk-event.ts';
import { lockIsOn } from './way-free.ts';

/** The checksum that came with a photo. */
const checksumIn = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'checksum' in value && typeof value.checksum === 'string'
    ? value.checksum
    : null;

/** What happens to a job as a whole, or beside a step without answering it. */
export const jobEvents: Readonly<Record<string, (walk: Walk, moment: Moment) => Judgement>> = {
  noted(_walk, { event }) {
    const says = words(event.value, 'says');
    if (says === null) return refused('Write the note in a few words.');
    const { step, who, at } = event;
    return accepted((onto) => onto.notes.push({ step, says, who, name: nameOf(event), at }));
  },

  photo(walk, { event }) {
    const reference = words(event.value, 'reference');
    const step = event.step === null ? undefined : walk.list.byId.get(event.step);
    if (reference === null || step === undefined) return refused('Send the photo to a step of this list.');
    const checksum = checksumIn(event.value);
    const again = standingPhotos(recordOf(walk, step.id)).some(
      (photo) => photo.reference === reference || (checksum !== null && photo.checksum === checksum),
    );
    if (again) return sameAgain(false);
    const { who, at } = event;
    return accepted((onto) => {
      const record = recordOf(onto, step.id);
      const photos = [...record.photos, { reference, checksum, who, name: nameOf(event), at }];
      onto.records.set(step.id, { ...record, photos });
    });
  },

  /** Takes one photo off a step that is still open: what a closed step rests on stays. */
  'photo-back'(walk, { event }) {
    const reference = words(event.value, 'reference');
    const step = event.step === null ? undefined : walk.list.byId.get(event.step);
    const photo = step && recordOf(walk, step.id).photos.findLast((each) => each.reference === reference);
    if (step === undefined || photo === undefined) return refused('There is no such photo on that step.');
    if (isClosed(walk, step.id)) return refused(`${step.title} is closed. Take the step back first.`);
    if (photo.who !== event.who && !isLead(event.standing)) {
      return refused(`${photo.name} sent it. It is taken back by the same person or a lead.`);
    }
    return accepted((onto) => {
      const record = recordOf(onto, step.id);
      onto.records.set(step.id, { ...record, photos: record.photos.filter((each) => each !== photo) });
    });
  },

  fact(walk, { event, day }) {
    const [fact, value] = [words(event.value, 'fact'), words(event.value, 'value')];
    const { facts } = walk.list.checklist;
    const known = fact !== null && Object.hasOwn(facts, fact) ? facts[fact as WalkFactId] : undefined;
    if (fact === null || known === undefined) return refused('This list does not ask for that.');
    if (value === null || !(value === 'unknown' || known.options.some(({ id }) => id === value))) {
      return refused(`${known.prompt} Pick one of the answers.`);
    }
    const confirmed = maySign(known.clearedBy, event.standing, day);
    const { id, step, who, at } = event;
    const entry = { event: id, step: null, fact, value, who, name: nameOf(event), at, confirmed, confirmedBy: null };
    const heard =
      confirmed || !known.safe.includes(value)
        ? null
        : `Noted as reported. It counts once ${eitherOf(known.clearedBy, walk.list.checklist.words.signers)} confirms it.`;
    return accepted(
      (onto) => {
        onto.facts = [...onto.facts, { ...entry, step }];
        relist(onto);
      },
      { says: heard },
    );
  },

  paused(walk, { event }) {
    if (walk.paused) return refused(`The job is paused already, by ${walk.paused.name}.`);
    const { who, at } = event;
    return accepted(
      (onto) => {
        onto.paused = { who, name: nameOf(event), at };
        lapse(onto, 'pause', `${nameOf(event)} paused the job.`);
      },
      { says: walk.list.checklist.rules.leaving },
    );
  },

  resumed(walk) {
    if (!walk.paused) return refused('The job is not paused.');
    return accepted((onto) => {
      onto.paused = null;
    });
  },

  joined(walk, { event, day }) {
    if (!maySign(['anyone'], event.standing, day)) return refused('Only people who work on jobs join one.');
    const { who } = event;
    if (walk.people.some((person) => person.who === who)) return sameAgain(false);
    return accepted((onto) => {
      onto.people = [...onto.people, { who, name: nameOf(event) }];
      lapse(onto, 'new-worker', `${nameOf(event)} has come to the job.`);
      relist(onto);
    });
  },

  left(walk, { event }) {
    const who = words(event.value, 'who') ?? event.who;
    if (who !== event.who && !isLead(event.standing))
      return refused('Only a lead records that somebody else has left.');
    const person = walk.people.find((each) => each.who === who);
    if (person === undefined) return refused('Nobody of that name is on this job.');
    if (lockIsOn(walk, who)) return refused(`${person.name}'s lock is still on the breaker. It comes off first.`);
    return accepted((onto) => {
      onto.people = onto.people.filter((each) => each.who !== who);
      relist(onto);
    });
  },

  box(walk, { event, day }) {
    if (!maySign(['anyone'], event.standing, day)) return refused('Only people who work on jobs add a box.');
    const id = words(event.value, 'id');
    if (id === null || !/^[a-z0-9-]{1,40}$/.test(id)) return refused('Give the box a short name of small letters.');
    const there = walk.boxes.some((box) => box.id === id);
    if (words(event.value, 'gone') !== null) {
      if (!isLead(event.standing)) return refused('Only a lead takes a box off the list.');
      if (!there) return refused('There is no such box on this list.');
      return accepted((onto) => {
        onto.boxes = onto.boxes.filter((box) => box.id !== id);
        relist(onto);
      });
    }
    const kind = words(event.value, 'kind');
    if (kind === null || !Object.hasOwn(walk.list.checklist.words.boxes, kind)) {
      return refused('Say what it is: fan, switch box or junction box.');
    }
    if (there || walk.list.boxes.some((box) => box.id === id && box.kind !== kind)) {
      return refused('A box of that name is on the list already.');
    }
    const name = words(event.value, 'name') ?? id.replaceAll('-', ' ');
    return accepted((onto) => {
      onto.boxes = [...onto.boxes, { id, kind: kind as BoxKind, name }];
      relist(onto);
    });
  },
};
