import type { Finding } from '#findings/finding.ts';
import { boxRules } from '#knowledge/box-rules.ts';
import { canadianBoxRules } from '#knowledge/canadian-box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { groundsIn, insulatedIn } from '../questions/wire-list-reading.ts';
import { type BoxStory, codeName } from './box-findings.ts';
import { citations } from './citations.ts';

const total = (wires: readonly { readonly count: number }[]): number =>
  wires.reduce((sum, { count }) => sum + count, 0);

/** Cautions that stand beside the sum: what it rests on and what it does not say. */
export function boxRemarks({ inputs, count }: BoxStory): readonly Finding[] {
  const found: Finding[] = [];
  const remark = (id: string, weight: 'advice' | 'caution', says: string, ...sources: Finding['sources']) =>
    found.push({ id, weight, says, working: [], sources: citations(...sources) });
  const { editions, conductors, grounds, told } = inputs;
  if (count.canopyRefused) {
    remark('canopy-refused', 'caution', `Count every lead. ${boxRules.canopy.says}`, cite(boxRules.canopy));
  }
  if (editions.length > 1) {
    remark(
      'code-edition',
      'caution',
      `Two editions were named, ${editions.map(codeName).join(' and ')}: counted by ${codeName(count.edition)}, which asks for more. Ask the inspector which applies.`,
    );
  } else if (!count.editionKnown) {
    remark(
      'code-edition',
      'advice',
      `Ask which edition of the electrical code applies. Counted by ${codeName(count.edition)}, the strictest reading of the NEC; Canada counts otherwise.`,
    );
  }
  const brought = groundsIn(conductors).count;
  const said = total(insulatedIn(grounds));
  if (told.grounds && brought > said) {
    remark(
      'grounds-differ',
      'caution',
      `Check the ground wires: ${said} were told, but the cables bring ${brought}. Counted ${brought}.`,
    );
  }
  const gangsNeeded = inputs.devices.reduce((sum, { count: straps, gangs }) => sum + straps * gangs, 0);
  const gangs = inputs.box?.gangs ?? null;
  if (gangs !== null && gangsNeeded > gangs) {
    remark(
      'gangs',
      'caution',
      `The devices take ${gangsNeeded} gangs and the box has ${gangs}: they do not go in side by side.`,
      cite(boxRules['wide-device']),
    );
  }
  if (count.edition === 'canada' && inputs.devices.length > 0 && inputs.deviceDepth === null) {
    remark(
      'device-depth',
      'caution',
      `Measure the device. ${canadianBoxRules['deep-device'].says}`,
      cite(canadianBoxRules['deep-device']),
    );
  }
  if (count.edition === 'canada' && inputs.connectors.wires.length === 0) {
    remark(
      'wire-connectors',
      'caution',
      `Count the wire connectors too. ${canadianBoxRules.connectors.says}`,
      cite(canadianBoxRules.connectors),
    );
  }
  if (inputs.serves === 'fan') {
    remark('fan-compartment', 'advice', boxRules['fan-compartment'].says, cite(boxRules['fan-compartment']));
  }
  remark(
    'fill-alone',
    'advice',
    'Room is one rule of many: it says nothing of what the wires are fit for. Prove the box dead before a hand goes in; local code, the inspector and a licensed electrician decide.',
  );
  return found;
}
