import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { contradiction } from '#walkthrough/evidence.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { nextSteps } from '#walkthrough/next-steps.ts';
import { eitherOf, maySign } from '#walkthrough/signing.ts';
import { type StepValue, stepValue } from '#walkthrough/walk-event.ts';
import { valueWords } from '../words/swap-values.ts';
import { remark } from './plain-replies.ts';
import { besideAnswer, completed, workedOut } from './swap-beside.ts';
import { allOrNothing, type Entry, enter, refusedReply } from './swap-entering.ts';
import { nextPage, stepPage, workedOutWord } from './swap-page.ts';
import { hung, partsLeft, photosOn } from './swap-photo-kept.ts';
import { nextFor, stepKey, stepMeant } from './swap-steps.ts';
import { fieldsOf, filledIn, readFilled, saidIn } from './swap-values.ts';
import { type Meant, tokenOf, toldOf, type Walker, walkerOf, walkMeant } from './swap-walk.ts';

export type Given = Readonly<Record<string, string>>;

/** Where an action happens, and for whom. */
export interface Scene extends Meant {
  readonly walker: Walker;
}

export function scene(desk: Desk, given: Given): Scene | { readonly rejected: string } {
  const walker = walkerOf(desk, given['as']);
  if ('rejected' in walker) return walker;
  const meant = walkMeant(desk, given['job']);
  return 'rejected' in meant ? meant : { ...meant.value, walker: walker.value };
}

/** The step meant; the next one of this person when none is named. */
export function stepOf(
  desk: Desk,
  { walk, walker }: Scene,
  said: string | undefined,
): ListedStep | { readonly rejected: string } {
  if (said !== undefined && said.trim() !== '') {
    const meant = stepMeant(walk, said);
    return 'rejected' in meant ? meant : meant.value;
  }
  return nextFor(walk, walker) ?? { rejected: nextPage(desk, { walk, walker }).headline };
}

/** Keeps something, then shows what comes next with a word on what was kept. */
export function kept(
  desk: Desk,
  at: Scene,
  { beside = [], ...entry }: Entry & { readonly beside?: readonly Finding[] },
  done: string,
): Reply {
  const entered = enter(desk, at.walk, at.walker, { ...entry, shownAt: at.shownAt });
  if ('refused' in entered) return refusedReply(entered.refused, { findings: beside });
  const { walk, says, closes, fresh } = entered;
  const open = entry.step !== null && !closes && fresh && (entry.what === 'done' || entry.what === 'signed');
  const stopped = walk.state.steps.get(entry.step?.id ?? '')?.status === 'stopped';
  const told = toldOf(walk);
  const openSays = stopped ? told.stopsHere : told.staysOpen;
  const value = stepValue(entry.value);
  const means =
    entry.step && value && fresh && entry.what === 'done' ? besideAnswer(desk, walk, entry.step, value) : [];
  const first: readonly Finding[] = [
    fresh
      ? remark('recorded', open ? 'caution' : 'good', open ? openSays : done)
      : remark('recorded', 'good', told.recordedAlready),
    ...(fresh ? onlyTyped(at, entry) : []),
    ...(says && entry.what !== 'overridden' ? [remark('says', 'caution', says)] : []),
    ...(fresh ? beside : []),
    ...means,
  ];
  return nextPage(desk, { walk, walker: at.walker }, first);
}

const unchecked = (says: string): Finding => remark('unchecked-name', 'caution', says);

/** The name somebody acts under at a keyboard several people share; none where people speak under their own. */
const typedName = ({ walker }: Pick<Scene, 'walker'>): readonly string[] =>
  walker.as === undefined ? [] : [walker.standing.name ?? walker.who];

/** Whose sign-off was taken on nothing but a typed name. A tick that is anybody's is no sign-off. */
const onlyTyped = (at: Scene, { what, step }: Entry): readonly Finding[] =>
  what === 'signed' || what === 'overridden' || (what === 'done' && step !== null && !step.signers.includes('anyone'))
    ? typedName(at).map((name) => unchecked(toldOf(at.walk).onlyTyped(name)))
    : [];

/** What a form or an option says of a step. */
const filledOf = (listed: ListedStep, given: Given): Given => {
  const fields = fieldsOf(listed).flatMap(({ id }) => {
    const text = Object.hasOwn(given, `part-${id}`) ? given[`part-${id}`] : undefined;
    return text === undefined ? [] : [[id, text] as const];
  });
  const value = given['value'] ?? '';
  return { ...(value === workedOutWord ? {} : filledIn(listed, value)), ...Object.fromEntries(fields) };
};

const pick = (value: StepValue, id: string): StepValue => ({ [id]: value[id] ?? '' });

/** Why this person cannot sign a hold now; nothing where they can. */
function notSignedBy({ walk, walker }: Scene, listed: ListedStep): string | null {
  const waits = walk.state.steps.get(listed.id)?.waitsFor;
  if (waits) return waits;
  if (nextSteps(walk.state, walker).yours.some(({ id }) => id === listed.id)) return null;
  return toldOf(walk).cannotSign(eitherOf(listed.signers, walk.checklist));
}

/**
 * Why whatever this person fills in here would be refused, said before anything is filled in or pictured; nothing where some of
 * it would be taken. What stops the job is anybody's to record.
 */
function notForThem({ walk, walker }: Scene, listed: ListedStep, what: 'done' | 'signed'): string | null {
  const options = listed.parts.flatMap((part) =>
    part.kind === 'choice' ? part.options.map((option) => ({ ...option, part: part.id })) : [],
  );
  const signers = [...listed.signers, ...options.flatMap((option) => option.signers ?? [])];
  if (listed.person || maySign(signers, walker.standing, walker.day)) return null;
  const told = toldOf(walk);
  const needed = eitherOf(listed.signers, walk.checklist);
  const [stop] = options.filter(({ stops }) => stops !== undefined);
  return [
    what === 'signed' ? told.cannotSign(needed) : told.cannotRecord(needed),
    ...(stop ? [told.anybodyStops(`${stop.part}=${stop.id}`)] : []),
  ].join(' ');
}

/** `done` and `sign` are one thing to read and two things to mean. */
export function answered(desk: Desk, given: Given, what: 'done' | 'signed'): Reply {
  const at = scene(desk, given);
  if ('rejected' in at) return refusedReply(at.rejected);
  const listed = stepOf(desk, at, given['step']);
  if ('rejected' in listed) return refusedReply(listed.rejected);
  const { walk, walker } = at;
  const filled = filledOf(listed, given);
  const said = Object.keys(filled).length > 0 || given['value'] === workedOutWord;
  const shown = at.shownAt !== null || given['confirm'] === 'yes';
  const { units } = desk.telling;
  const { language } = walk.checklist;
  const told = toldOf(walk);
  if (what === 'signed' && listed.step.hold && !shown) {
    const mayNot = notSignedBy(at, listed);
    return stepPage(desk, at, listed, [
      ...(mayNot === null
        ? [
            remark('look-first', 'advice', told.signFor),
            ...typedName(at)
              .map((each) => told.asTyped(each))
              .map(unchecked),
          ]
        : [remark('not-yours', 'caution', mayNot)]),
    ]);
  }
  if (!said && partsLeft(walk, listed).length > 0) {
    const refusal = notForThem(at, listed, what);
    if (refusal !== null) return refusedReply(refusal);
    // Whoever pressed it has the page before them.
    const page =
      at.shownAt === null
        ? stepPage(desk, at, listed)
        : { headline: `${listed.step.code}: ${listed.step.do}`, findings: [] };
    const ready = workedOut(desk, walk, listed);
    return {
      ...page,
      asks: {
        title: listed.title,
        command: 'swap',
        action: what === 'signed' ? 'sign' : 'done',
        given: {
          job: at.shownAt === null ? tokenOf(walk) : (given['job'] ?? ''),
          step: stepKey(listed),
          ...(walker.as ? { as: walker.as } : {}),
        },
        fields: fieldsOf(listed, valueWords[language]).map((field) => ({
          ...field,
          id: `part-${field.id}`,
          ...(field.photo
            ? {}
            : {
                trouble: (text: string) => {
                  const reading = readFilled(listed, { [field.id]: text }, units, language);
                  return 'rejected' in reading ? reading.rejected : undefined;
                },
              }),
          ...(ready[field.id] === undefined
            ? {}
            : {
                optional: true,
                accepts: told.leftEmpty(saidIn(listed, pick(ready, field.id), units, language)),
              }),
          ...(field.photo && photosOn(walk, listed).length > 0 ? { optional: true, accepts: told.anotherPicture } : {}),
        })),
      },
    };
  }
  const isPhoto = ([id]: readonly [string, string]) => listed.parts.some((p) => p.id === id && p.kind === 'photo');
  const entries = Object.entries(filled);
  const rest = Object.fromEntries(entries.filter((each) => !isPhoto(each)));
  const reading = readFilled(listed, rest, units, language);
  if ('rejected' in reading) return refusedReply(reading.rejected);
  const against = contradiction(listed.parts, reading.value);
  if (against !== null) return refusedReply(against);
  const late = given['at'] === undefined ? undefined : new Date(given['at']);
  if (late && Number.isNaN(late.getTime())) return refusedReply(told.giveTime);
  const photos = entries.filter(isPhoto).flatMap(([, named]) => (named.trim() === '' ? [] : [named]));
  const { value, findings: beside } = completed(desk, walk, listed, reading.value);
  const entry = { what, step: listed, value, at: late, beside };
  return allOrNothing(desk, () =>
    withPhotos(desk, at, { photos, entry, done: `${told.verb[what]}: ${listed.title}.` }),
  );
}

/** Keeps the photos that came with an answer, and then the answer. */
function withPhotos(
  desk: Desk,
  at: Scene,
  {
    photos,
    entry,
    done,
  }: {
    readonly photos: readonly string[];
    readonly entry: Entry & { readonly step: ListedStep; readonly beside: readonly Finding[] };
    readonly done: string;
  },
): Reply {
  let { walk } = at;
  const says: Finding[] = [];
  for (const named of photos) {
    const hanging = hung(desk, { ...at, walk }, entry.step, named);
    if ('rejected' in hanging) return refusedReply(hanging.rejected);
    walk = hanging.walk;
    says.push(...hanging.says);
  }
  const reply = kept(desk, { ...at, walk }, entry, done);
  return { ...reply, findings: [...says, ...reply.findings] };
}
