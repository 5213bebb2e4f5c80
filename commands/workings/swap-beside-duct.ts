import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { takeOffDefaults } from '#knowledge/materials.ts';
import { ductLength } from '#quantity/kinds.ts';
import parts from '../parts.ts';
import type { BesideWords } from '../words/swap-beside.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import { ductTape, insulationFinding, pitchFinding, takeOffFinding } from './parts-findings.ts';
import { type PartsStory, partRows, partsStory } from './parts-list.ts';
import { ductRetold, partRetold } from './swap-retold.ts';
import { recallFor } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

/** What is needed at one step, told from the take-off; nothing where that step has no part in this run. */
type Need = (story: PartsStory, told: BesideWords) => Finding | undefined;

/** A line of the take-off, with the working of the list it is from. */
const line =
  (id: string, what: string, says: (story: PartsStory, words: BesideWords) => string | undefined): Need =>
  (story, words) => {
    const told = says(story, words);
    const { working, sources } = takeOffFinding(story);
    const own = working.filter((step) => step.what === what);
    const cited = own.flatMap(({ source }) => source ?? []);
    return told === undefined
      ? undefined
      : { id, weight: 'good', says: told, working: own, sources: cited.length > 0 ? cited : sources };
  };

const hangers = line('hangers', 'Hangers', ({ takeOff, units }, words) =>
  takeOff.hangers === 0
    ? undefined
    : words.hangers(
        takeOff.hangers,
        ductLength.showShort(takeOffDefaults.flexSpacing, units),
        ductLength.showShort(takeOffDefaults.rigidSpacing, units),
      ),
);

/** How much tape the joints take, without what is said of it in the shop. */
const tape: Need = (story, words) => {
  const { takeOff, units } = story;
  const brought = ductTape(story);
  const says = words.tape(takeOff.joints, ductLength.show(takeOff.tape, units));
  return brought && { ...brought, says };
};

const needs: Readonly<Record<string, Need>> = {
  seal: tape,
  'tape-rubbed': tape,
  'metal-joints': line('screws', 'Screws', ({ takeOff }, words) =>
    takeOff.screws === 0 ? undefined : words.screws(takeOff.joints, takeOff.screws),
  ),
  'flex-joints': line('bands', 'Bands', ({ takeOff }, words) =>
    takeOff.bands === 0 ? undefined : words.bands(takeOff.bands),
  ),
  'flex-support': hangers,
  'metal-support': hangers,
  slope: pitchFinding,
  wrap: insulationFinding,
};

export const isDuctStep = (step: string): boolean => Object.hasOwn(needs, step);

/** What the take-off of the run on the sheet gives for one step at the duct. */
export function ductBeside(desk: Desk, walk: OpenWalk, step: string): readonly Finding[] {
  const { language } = walk.checklist;
  const told = besideTold(walk);
  const worked = fromSheet(parts.interview, recallFor(desk, walk));
  if ('lacks' in worked) return [lacksRemark(told.notCountedOut, worked.lacks, { command: 'parts', language })];
  const { units } = desk.telling;
  const story = partsStory(worked.inputs, units);
  const finding = needs[step]?.(story, told);
  return finding ? [ductRetold(finding, story, { language, units })] : [];
}

/** The list for the van in lines of words, or what the sheet lacks for it. A list without duct work loads nothing here. */
export function partsToLoad(
  desk: Desk,
  walk: OpenWalk,
): { readonly rows: readonly string[]; readonly findings: readonly Finding[] } {
  if (!walk.checklist.steps.some(({ id }) => loads.includes(id))) return { rows: [], findings: [] };
  const { language } = walk.checklist;
  const worked = fromSheet(parts.interview, recallFor(desk, walk));
  if ('lacks' in worked)
    return {
      rows: [],
      findings: [lacksRemark(besideTold(walk).partsNotListed, worked.lacks, { command: 'parts', language })],
    };
  const rows = partRows(partsStory(worked.inputs, desk.telling.units)).map((row) => partRetold(row, language));
  return { rows, findings: assumedRemark(worked.assumed, { command: 'parts', language }) };
}

/** Steps that need the parts of the run on the truck. */
const loads: readonly string[] = ['seal', 'duct-on-truck'];
