import type { Finding } from '#findings/finding.ts';
import { boxRules } from '#knowledge/box-rules.ts';
import { canadianBoxRules } from '#knowledge/canadian-box-rules.ts';
import { type Citation, cite } from '#knowledge/sources.ts';
import { groundsIn, insulatedIn } from '../questions/wire-list-reading.ts';
import { type BoxStory, codeName } from './box-findings.ts';
import type { BoxCount, BoxInputs } from './box-inputs.ts';
import { citations } from './citations.ts';

const total = (wires: readonly { readonly count: number }[]): number =>
  wires.reduce((sum, { count }) => sum + count, 0);

interface Word {
  readonly id: string;
  readonly weight: 'advice' | 'caution';
  readonly says: string;
  readonly source?: Citation;
}

/** What became of a canopy that was told. */
function canopyWord({ canopy, serves, fixtureWires }: BoxInputs, { edition }: BoxCount): readonly Word[] {
  if (!canopy) return [];
  const { says, ...rule } = edition === 'canada' ? canadianBoxRules['fixture-wire'] : boxRules.canopy;
  const source = cite(rule);
  const id = 'canopy-refused';
  if (serves !== 'light') return [{ id, weight: 'caution', says: `Count every lead. ${says}`, source }];
  const thin = insulatedIn(fixtureWires).some(({ awg }) => awg > boxRules.canopy.thinnerThan);
  if (edition !== 'canada' && thin) return [];
  return [{ id, weight: 'advice', says: `The canopy changes nothing here. ${says}`, source }];
}

/** What was told to be in the box besides, where that and its count do not agree. */
function extrasWord({ extras, ...inputs }: BoxInputs): readonly Word[] {
  if (!extras.known) return [];
  const there: Readonly<Record<string, number>> = {
    'pass-through': inputs.passThrough.wires.length,
    loops: inputs.loops.wires.length,
    'support-fittings': inputs.supportFittings.length,
    'terminal-blocks': inputs.terminalBlocks.wires.length,
    pigtails: inputs.pigtails.wires.length,
  };
  const named = (id: string) => id.replaceAll('-', ' ');
  const differing = Object.entries(there).filter(([id, count]) => extras.value.includes(id) !== count > 0);
  return differing.map(([id, count]) => ({
    id: 'extras-differ',
    weight: 'caution',
    says:
      count > 0
        ? `Look again: ${named(id)} were told with a count, but not among what else is in the box. They are counted.`
        : `Look again: ${named(id)} were said to be in the box, but nobody gave a count.`,
  }));
}

/** What the depth of a device means under the code that counts, told or not. */
function depthWord({ devices, deviceDepth, told }: BoxInputs, { edition }: BoxCount): readonly Word[] {
  const id = 'device-depth';
  if (edition === 'canada' && devices.length > 0 && deviceDepth === null) {
    const rule = canadianBoxRules['deep-device'];
    const { says: likely } = canadianBoxRules['likely-depth'];
    return [{ id, weight: 'caution', says: `Measure the device. ${rule.says} ${likely}`, source: cite(rule) }];
  }
  if (deviceDepth === null) return [];
  if (devices.length === 0) {
    const says = told.devices
      ? 'Look again: the depth of a device was told, but no switch, timer or receptacle is in the box.'
      : 'Say which device goes in: its depth was told, but not which it is.';
    return [{ id, weight: 'caution', says }];
  }
  if (edition === 'canada') return [];
  const says = `${codeName(edition)} counts a device the same however deep it is. See that its depth goes in all the same.`;
  return [{ id, weight: 'advice', says, source: cite(boxRules.device) }];
}

/** Cautions that stand beside the sum: what it rests on and what it does not say. */
export function boxRemarks({ inputs, count }: BoxStory): readonly Finding[] {
  const found: Finding[] = [];
  const remark = (
    id: string,
    weight: 'advice' | 'caution',
    says: string,
    ...sources: readonly (Citation | undefined)[]
  ) => found.push({ id, weight, says, working: [], sources: citations(...sources) });
  const { editions, conductors, grounds, told } = inputs;
  for (const { id, weight, says, source } of [
    ...canopyWord(inputs, count),
    ...extrasWord(inputs),
    ...depthWord(inputs, count),
  ]) {
    remark(id, weight, says, source);
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
      `Ask which edition of the electrical code applies. Counted by ${codeName(count.edition)}, ${count.edition === 'canada' ? 'which asks for more than the NEC here' : 'the strictest reading of the NEC; Canada counts otherwise'}.`,
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
  if (count.edition === 'canada' && !told.connectors) {
    remark(
      'wire-connectors',
      'caution',
      `Count the wire connectors too. ${canadianBoxRules.connectors.says}`,
      cite(canadianBoxRules.connectors),
    );
  }
  if (told.serves && inputs.serves === 'fan') {
    remark('fan-compartment', 'advice', boxRules['fan-compartment'].says, cite(boxRules['fan-compartment']));
  }
  remark(
    'fill-alone',
    'advice',
    'Room is one rule of many: it says nothing of what the wires are fit for. Prove the box dead before a hand goes in; local code, the inspector and a licensed electrician decide.',
  );
  return found;
}
