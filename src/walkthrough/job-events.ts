import type { BoxKind, WalkFactId } from '#knowledge/checklist-facts.ts';
import { accepted, type Judgement, type Moment, refused, sameAgain } from './judgement.ts';
import { lapse, relist } from './reopening.ts';
import { eitherOf, isLead, maySign } from './signing.ts';
import { isClosed, recordOf, standingPhotos, type Walk, wordsOf } from './walk.ts';
import { nameOf, words } from './walk-event.ts';
import { lockIsOn } from './way-free.ts';

/** The checksum that came with a photo. */
const checksumIn = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'checksum' in value && typeof value.checksum === 'string'
    ? value.checksum
    : null;

/** What happens to a job as a whole, or beside a step without answering it. */
export const jobEvents: Readonly<Record<string, (walk: Walk, moment: Moment) => Judgement>> = {
  noted(walk, { event }) {
    const says = words(event.value, 'says');
    if (says === null) return refused(wordsOf(walk).writeNote);
    const { step, who, at } = event;
    return accepted((onto) => onto.notes.push({ step, says, who, name: nameOf(event), at }));
  },

  photo(walk, { event }) {
    const reference = words(event.value, 'reference');
    const step = event.step === null ? undefined : walk.list.byId.get(event.step);
    if (reference === null || step === undefined) return refused(wordsOf(walk).photoToStep);
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
    if (step === undefined || photo === undefined) return refused(wordsOf(walk).noSuchPhoto);
    if (isClosed(walk, step.id)) return refused(wordsOf(walk).stepClosed(step.title));
    if (photo.who !== event.who && !isLead(event.standing)) {
      return refused(wordsOf(walk).sentIt(photo.name));
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
    if (fact === null || known === undefined) return refused(wordsOf(walk).notAskedFor);
    if (value === null || !(value === 'unknown' || known.options.some(({ id }) => id === value))) {
      return refused(wordsOf(walk).pickOne(known.prompt));
    }
    const confirmed = maySign(known.clearedBy, event.standing, day);
    const { id, step, who, at } = event;
    const entry = { event: id, step: null, fact, value, who, name: nameOf(event), at, confirmed, confirmedBy: null };
    const heard =
      confirmed || !known.safe.includes(value)
        ? null
        : wordsOf(walk).reportedOnly(eitherOf(known.clearedBy, walk.list.checklist));
    return accepted(
      (onto) => {
        onto.facts = [...onto.facts, { ...entry, step }];
        relist(onto);
      },
      { says: heard },
    );
  },

  paused(walk, { event }) {
    if (walk.paused) return refused(wordsOf(walk).pausedAlready(walk.paused.name));
    const { who, at } = event;
    return accepted(
      (onto) => {
        onto.paused = { who, name: nameOf(event), at };
        lapse(onto, 'pause', wordsOf(walk).pausedBy(nameOf(event)));
      },
      { says: walk.list.checklist.rules.leaving },
    );
  },

  resumed(walk) {
    if (!walk.paused) return refused(wordsOf(walk).notPaused);
    return accepted((onto) => {
      onto.paused = null;
    });
  },

  joined(walk, { event, day }) {
    if (!maySign(['anyone'], event.standing, day)) return refused(wordsOf(walk).onlyWorkersJoin);
    const { who } = event;
    if (walk.people.some((person) => person.who === who)) return sameAgain(false);
    return accepted((onto) => {
      onto.people = [...onto.people, { who, name: nameOf(event) }];
      lapse(onto, 'new-worker', wordsOf(walk).hasCome(nameOf(event)));
      relist(onto);
    });
  },

  left(walk, { event }) {
    const who = words(event.value, 'who') ?? event.who;
    if (who !== event.who && !isLead(event.standing)) return refused(wordsOf(walk).onlyLeadRecordsLeft);
    const person = walk.people.find((each) => each.who === who);
    if (person === undefined) return refused(wordsOf(walk).nobodyOfThatName);
    if (lockIsOn(walk, who)) return refused(wordsOf(walk).lockStillOn(person.name));
    return accepted((onto) => {
      onto.people = onto.people.filter((each) => each.who !== who);
      relist(onto);
    });
  },

  box(walk, { event, day }) {
    if (!maySign(['anyone'], event.standing, day)) return refused(wordsOf(walk).onlyWorkersAddBox);
    const id = words(event.value, 'id');
    if (id === null || !/^[a-z0-9-]{1,40}$/.test(id)) return refused(wordsOf(walk).shortName);
    const there = walk.boxes.some((box) => box.id === id);
    if (words(event.value, 'gone') !== null) {
      if (!isLead(event.standing)) return refused(wordsOf(walk).onlyLeadTakesBox);
      if (!there) return refused(wordsOf(walk).noSuchBox);
      return accepted((onto) => {
        onto.boxes = onto.boxes.filter((box) => box.id !== id);
        relist(onto);
      });
    }
    const kind = words(event.value, 'kind');
    if (kind === null || !Object.hasOwn(walk.list.checklist.words.boxes, kind)) {
      return refused(wordsOf(walk).sayWhatItIs);
    }
    if (there || walk.list.boxes.some((box) => box.id === id && box.kind !== kind)) {
      return refused(wordsOf(walk).boxAlready);
    }
    const name = words(event.value, 'name') ?? id.replaceAll('-', ' ');
    return accepted((onto) => {
      onto.boxes = [...onto.boxes, { id, kind: kind as BoxKind, name }];
      relist(onto);
    });
  },
};
