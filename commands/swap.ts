import type { Action, DeskCommand, DeskOption } from '#chat/command.ts';
import { checklistWords } from '#knowledge/checklist-facts.ts';
import { checklistsIn } from '#knowledge/checklist-spanish.ts';
import { checklists } from '#knowledge/checklists.ts';
import { languageAt, type SwapWords, swapWords } from './words/swap.ts';
import { memberNamed } from './workings/crew-people.ts';
import { answered, type Given, kept, scene, stepOf } from './workings/swap-answering.ts';
import { carryReply } from './workings/swap-carry.ts';
import { refusedReply } from './workings/swap-entering.ts';
import { knownReply } from './workings/swap-known.ts';
import { nextPage, stepPage } from './workings/swap-page.ts';
import { photoSent, photoTakenBack } from './workings/swap-photo.ts';
import { startedReply } from './workings/swap-started.ts';
import { statusReply } from './workings/swap-status.ts';
import { stuckAt } from './workings/swap-stuck.ts';
import { isChecklist, toldOf, walkerOf, walkMeant } from './workings/swap-walk.ts';

const as: DeskOption = { id: 'as', brief: 'who you are, at a keyboard several people share', terminal: true };
const job: DeskOption = { id: 'job', brief: 'the job, by number; the one open here when left out' };
const step: DeskOption = {
  id: 'step',
  brief: 'the step, such as E04; the next one of yours when left out',
  suggest(desk, typed) {
    const meant = walkMeant(desk, undefined);
    if ('rejected' in meant) return [];
    const said = typed.trim().toLowerCase();
    return [...meant.value.walk.state.steps.values()]
      .filter(({ status, listed }) => status !== 'served' && listed.title.toLowerCase().includes(said))
      .slice(0, 25)
      .map(({ listed }) => ({ id: listed.id, label: listed.title }));
  },
};
const value: DeskOption = {
  id: 'value',
  brief: 'what to record, such as: 6 in, or controls=on hot-neutral=0',
  longest: 600,
};

/** An action that keeps one event about the list as a whole. */
const whole = (
  name: string,
  summary: string,
  {
    what,
    done,
    options = [],
    toKeep = () => null,
  }: {
    readonly what: string;
    readonly done: (told: SwapWords) => string;
    readonly options?: readonly DeskOption[];
    readonly toKeep?: (given: Given) => unknown;
  },
): Action => ({
  name,
  summary,
  options: [...options, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    return kept(desk, at, { what, step: null, value: toKeep(given) }, done(toldOf(at.walk)));
  },
});

/** An action that keeps one event about a step. */
const aboutStep = (
  name: string,
  summary: string,
  {
    what,
    done,
    options,
    toKeep,
    needsStep,
  }: {
    readonly what: string;
    readonly done: (told: SwapWords) => string;
    readonly options: readonly DeskOption[];
    readonly toKeep: (given: Given) => unknown;
    readonly needsStep: boolean;
  },
): Action => ({
  name,
  summary,
  options: [...options, needsStep ? { ...step, brief: 'the step, such as E04', required: true } : step, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    const said = given['step'];
    const listed = said === undefined && !needsStep ? null : stepOf(desk, at, said);
    if (listed && 'rejected' in listed) return refusedReply(listed.rejected);
    return kept(desk, at, { what, step: listed, value: toKeep(given) }, done(toldOf(at.walk)));
  },
});

const choicesOf = (words: Readonly<Record<string, string>>) =>
  Object.entries(words).map(([id, label]) => ({ id, label }));

const start: Action = {
  name: 'start',
  summary: 'Make the list for this job from what its sheet knows: steps, tools and protective gear.',
  options: [
    {
      id: 'list',
      brief: 'which list; the whole swap when left out',
      choices: Object.values(checklists).map(({ id, name }) => ({ id, label: name })),
      choiceLabels: {
        spanish: Object.fromEntries(Object.values(checklistsIn.spanish).map(({ id, name }) => [id, name])),
      },
    },
    as,
  ],
  act(desk, given) {
    const id = given['list'] ?? 'swap';
    if (!isChecklist(id))
      return refusedReply(swapWords[languageAt(desk)].noSuchList(Object.keys(checklists).join(', ')));
    const walker = walkerOf(desk, given['as']);
    if ('rejected' in walker) return refusedReply(walker.rejected);
    return startedReply(desk, walker.value, id);
  },
};

const next: Action = {
  name: 'next',
  summary: 'Show the next step you can do: what to do, what to look for, why, and what to record.',
  options: [step, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    if (given['step'] === undefined) return nextPage(desk, at);
    const listed = stepOf(desk, at, given['step']);
    return 'rejected' in listed ? refusedReply(listed.rejected) : stepPage(desk, at, listed);
  },
};

const done: Action = {
  name: 'done',
  summary: 'Record a step as done, with what it asks for.',
  options: [value, step, { id: 'at', brief: 'when it was done, if that was earlier: 2027-03-31T14:05Z' }, job, as],
  act: (desk, given) => answered(desk, given, 'done'),
};

const sign: Action = {
  name: 'sign',
  summary: 'See what a hold rests on, and sign it.',
  options: [
    value,
    step,
    { id: 'confirm', brief: 'yes, once you have read what you sign for', choices: [{ id: 'yes', label: 'yes' }] },
    job,
    as,
  ],
  act: (desk, given) => answered(desk, given, 'signed'),
};

const override = aboutStep(
  'override',
  'Pass a step over with a reason. For leads; never a hold, never where somebody can be hurt.',
  {
    what: 'overridden',
    done: (told) => told.passedOver,
    options: [{ id: 'reason', brief: 'why', required: true }],
    toKeep: ({ reason }) => ({ reason }),
    needsStep: true,
  },
);

const note = aboutStep('note', 'Write a note beside a step or the whole job.', {
  what: 'noted',
  done: (told) => told.noted,
  options: [{ id: 'says', brief: 'the note', required: true }],
  toKeep: ({ says }) => ({ says }),
  needsStep: false,
});

const photo: Action = {
  name: 'photo',
  summary: 'Hang a photo on a step: a JPEG, PNG, WebP or HEIC picture of at most 10 MB.',
  options: [{ id: 'file', brief: 'the photo', required: true, photo: true }, step, job, as],
  act: photoSent,
};

const photoBack: Action = {
  name: 'photo-back',
  summary: 'Take a photo back from a step: your newest there.',
  options: [{ ...step, required: true }, job, as],
  act: photoTakenBack,
};

const stuck: Action = {
  name: 'stuck',
  summary: 'Say that you cannot go on: it stands in the status, and you see who can help.',
  options: [{ id: 'says', brief: 'what keeps you' }, step, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    const listed = stepOf(desk, at, given['step']);
    if ('rejected' in listed) return refusedReply(listed.rejected);
    return stuckAt(desk, at, listed, given['says']);
  },
};

const back: Action = {
  name: 'back',
  summary: 'Take back what a step says; your newest answer when no step is named.',
  options: [step, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    const { events, state } = at.walk;
    const newest = events.findLast(
      ({ who, step: id, what }) =>
        who === at.walker.who &&
        ['done', 'signed', 'overridden'].includes(what) &&
        id !== null &&
        ['closed', 'skipped'].includes(state.steps.get(id)?.status ?? ''),
    );
    const said = given['step'] ?? newest?.step ?? undefined;
    if (said === undefined) return refusedReply(toldOf(at.walk).nothingToTakeBack);
    const listed = stepOf(desk, at, said);
    if ('rejected' in listed) return refusedReply(listed.rejected);
    return kept(desk, at, { what: 'undone', step: listed, value: null }, toldOf(at.walk).takenBack(listed.title));
  },
};

const fact = whole('fact', 'Record one thing that decides which steps are needed.', {
  what: 'fact',
  done: (told) => told.recordedAnew,
  options: [
    {
      id: 'fact',
      brief: 'what it is about',
      required: true,
      suggest: (desk, typed) =>
        Object.entries(checklistsIn[languageAt(desk)].swap.facts)
          .filter(([id, { prompt }]) => `${id} ${prompt}`.toLowerCase().includes(typed.trim().toLowerCase()))
          .slice(0, 25)
          .map(([id, { prompt }]) => ({ id, label: prompt })),
    },
    {
      id: 'is',
      brief: 'how it is; unknown where nobody knows',
      required: true,
      suggest: (desk, typed) =>
        Object.values(checklistsIn[languageAt(desk)].swap.facts)
          .flatMap(({ options }) => options)
          .filter(({ id, label }) => `${id} ${label}`.toLowerCase().includes(typed.trim().toLowerCase()))
          .slice(0, 25),
    },
  ],
  toKeep: (given) => ({ fact: given['fact'], value: given['is'] }),
});

const known: Action = {
  name: 'known',
  summary: 'Say the few things that decide which steps are needed: five at a time, those that decide most first.',
  options: [job, as],
  act(desk, given) {
    const at = scene(desk, given);
    return 'rejected' in at ? refusedReply(at.rejected) : knownReply(desk, at, given);
  },
};

const boxId = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);

const box = whole('box', 'Name a box that will be opened: each is proven dead by itself.', {
  what: 'box',
  done: (told) => told.boxListed,
  options: [
    { id: 'name', brief: 'as the crew calls it, such as: switch by the door', required: true },
    {
      id: 'kind',
      brief: 'what it is',
      required: true,
      choices: choicesOf(checklistWords.boxes),
      choiceLabels: { spanish: checklistsIn.spanish.swap.words.boxes },
    },
  ],
  toKeep: ({ name = '', kind }) => ({ id: boxId(name), kind, name }),
});

const pause = whole('pause', 'Pause the job: every proof of being dead ends with it.', {
  what: 'paused',
  done: (told) => told.paused,
});
const resume = whole('resume', 'Go on after a pause.', { what: 'resumed', done: (told) => told.goingOn });
const join = whole('join', 'Come to the job. Your own lock goes on before you work.', {
  what: 'joined',
  done: (told) => told.onTheJob,
});
const leave: Action = {
  name: 'leave',
  summary: 'Leave the job, once your lock is off. A lead may say it of somebody who has gone.',
  options: [{ id: 'person', brief: 'who has left, where it is not you; for leads' }, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    const said = given['person'];
    const meant = said === undefined ? undefined : memberNamed(desk, said);
    if (meant && 'rejected' in meant) return refusedReply(meant.rejected);
    const gone = meant === undefined || meant.value.who === at.walker.who ? null : meant.value;
    const entry = { what: 'left', step: null, value: gone && { who: gone.who } };
    return kept(desk, at, entry, toldOf(at.walk).offTheJob(gone?.name ?? null));
  },
};

const status: Action = {
  name: 'status',
  summary: 'Show how far the list is, the holds left, who is waited for, and what is out of range.',
  options: [job, as],
  act(desk, given) {
    const at = scene(desk, given);
    return 'rejected' in at ? refusedReply(at.rejected) : statusReply(desk, at.walk, at.walker);
  },
};

const carry: Action = {
  name: 'carry',
  summary: 'Make a sheet of what is left, for an attic without signal.',
  options: [{ id: 'stage', brief: 'one stage, such as duct; all when left out' }, job, as],
  act(desk, given) {
    const at = scene(desk, given);
    if ('rejected' in at) return refusedReply(at.rejected);
    const stages = at.walk.checklist.stages.map(({ id }) => id);
    const stage = given['stage']?.trim().toLowerCase();
    if (stage !== undefined && !stages.includes(stage))
      return refusedReply(toldOf(at.walk).nameStage(stages.join(', ')));
    return carryReply(at.walk, stage);
  },
};

/** Every answer of a list says in which language it is. */
const inItsLanguage = (action: Action): Action => ({
  ...action,
  act(desk, given) {
    const reply = action.act(desk, given);
    return 'start' in reply ? reply : { language: languageAt(desk), ...reply };
  },
});

const swap: DeskCommand = {
  kind: 'desk',
  name: 'swap',
  summary: 'The job step by step: who does what, what is recorded, and the holds a qualified person signs.',
  summaries: {
    spanish: 'El trabajo paso a paso: quién hace qué, qué se anota, y los altos que firma una persona calificada.',
  },
  example: 'start list=swap',
  actions: [
    start,
    next,
    done,
    sign,
    override,
    note,
    stuck,
    photo,
    photoBack,
    back,
    known,
    fact,
    box,
    pause,
    resume,
    join,
    leave,
    status,
    carry,
  ].map((action) => ({ ...inItsLanguage(action), glosses: true })),
};

export default swap;
