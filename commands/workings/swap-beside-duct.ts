import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { takeOffDefaults } from '#knowledge/materials.ts';
import { ductLength } from '#quantity/kinds.ts';
import parts from '../parts.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import { ductTape, insulationFinding, pitchFinding, takeOffFinding } from './parts-findings.ts';
import { type PartsStory, partRows, partsStory } from './parts-list.ts';
import { counted } from './plain-replies.ts';
import { recallFor } from './swap-sheet.ts';
import type { OpenWalk } from './swap-walk.ts';

/** What is needed at one step, told from the take-off; nothing where that step has no part in this run. */
type Need = (story: PartsStory) => Finding | undefined;

/** A line of the take-off, with the working of the list it is from. */
const line =
  (id: string, what: string, says: (story: PartsStory) => string | undefined): Need =>
  (story) => {
    const told = says(story);
    const { working, sources } = takeOffFinding(story);
    const own = working.filter((step) => step.what === what);
    const cited = own.flatMap(({ source }) => source ?? []);
    return told === undefined
      ? undefined
      : { id, weight: 'good', says: told, working: own, sources: cited.length > 0 ? cited : sources };
  };

const hangers = line('hangers', 'Hangers', ({ takeOff, units }) =>
  takeOff.hangers === 0
    ? undefined
    : `The run on the sheet takes ${counted(takeOff.hangers, 'hanger', 'hangers')}: every ${ductLength.showShort(takeOffDefaults.flexSpacing, units)} of flex and ${ductLength.showShort(takeOffDefaults.rigidSpacing, units)} of metal.`,
);

/** How much tape the joints take, without what is said of it in the shop. */
const tape: Need = (story) => {
  const { takeOff, units } = story;
  const brought = ductTape(story);
  const says = `Seal ${counted(takeOff.joints, 'joint', 'joints')}, collar and hood among them: ${ductLength.show(takeOff.tape, units)} of foil tape, waste included.`;
  return brought && { ...brought, says };
};

const needs: Readonly<Record<string, Need>> = {
  seal: tape,
  'tape-rubbed': tape,
  'metal-joints': line('screws', 'Screws', ({ takeOff }) =>
    takeOff.screws === 0
      ? undefined
      : `The run on the sheet has ${counted(takeOff.joints, 'joint', 'joints')}, collar and hood among them, and takes ${counted(takeOff.screws, 'screw', 'screws')}.`,
  ),
  'flex-joints': line('bands', 'Bands', ({ takeOff }) =>
    takeOff.bands === 0 ? undefined : `The run on the sheet takes ${counted(takeOff.bands, 'band', 'bands')}.`,
  ),
  'flex-support': hangers,
  'metal-support': hangers,
  slope: pitchFinding,
  wrap: insulationFinding,
};

export const isDuctStep = (step: string): boolean => Object.hasOwn(needs, step);

/** What the take-off of the run on the sheet gives for one step at the duct. */
export function ductBeside(desk: Desk, walk: OpenWalk, step: string): readonly Finding[] {
  const worked = fromSheet(parts.interview, recallFor(desk, walk));
  if ('lacks' in worked) return [lacksRemark('Not counted out', worked.lacks, 'parts')];
  const finding = needs[step]?.(partsStory(worked.inputs, desk.telling.units));
  return finding ? [finding] : [];
}

/** The list for the van in lines of words, or what the sheet lacks for it. A list without duct work loads nothing here. */
export function partsToLoad(
  desk: Desk,
  walk: OpenWalk,
): { readonly rows: readonly string[]; readonly findings: readonly Finding[] } {
  if (!walk.checklist.steps.some(({ id }) => loads.includes(id))) return { rows: [], findings: [] };
  const worked = fromSheet(parts.interview, recallFor(desk, walk));
  if ('lacks' in worked) return { rows: [], findings: [lacksRemark('Parts not listed', worked.lacks, 'parts')] };
  const rows = partRows(partsStory(worked.inputs, desk.telling.units)).map(({ item, size, quantity }) =>
    [/^\d+$/.test(quantity) ? `${quantity} ×` : quantity, size, item].filter((word) => word !== '').join(' '),
  );
  return { rows, findings: assumedRemark(worked.assumed, 'parts') };
}

/** Steps that need the parts of the run on the truck. */
const loads: readonly string[] = ['seal', 'duct-on-truck'];
