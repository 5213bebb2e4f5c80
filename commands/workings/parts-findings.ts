import { dropOverRun } from '#engine/take-off/round-duct.ts';
import type { Finding, Step } from '#findings/finding.ts';
import {
  type AllowanceId,
  ductSealants,
  leastSlope,
  slope,
  takeOffAllowances,
  takeOffDefaults,
} from '#knowledge/materials.ts';
import { cite } from '#knowledge/sources.ts';
import { ductDiameter, ductLength, insulation, roomArea, smallLength } from '#quantity/kinds.ts';
import { metres, squareMetres } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { type PartsStory, partRows, toBuy } from './parts-list.ts';

const allowance = (id: AllowanceId) => cite(takeOffAllowances[id]);

/** The list itself, as a table that can be copied. */
export function takeOffFinding(story: PartsStory): Finding {
  const { takeOff, run, units } = story;
  const rows = partRows(story);
  const joints = takeOff.jointsBySize.map(
    ({ diameter, amount }) => `${amount} of ${ductDiameter.showShort(diameter, units)}`,
  );
  return {
    id: 'take-off',
    weight: 'good',
    says: `${rows.length} lines for ${ductLength.show(run.length, units)} of duct with ${takeOff.joints} joints. The list is below.`,
    value: { number: rows.length, unit: '1', shown: `${rows.length} lines` },
    working: [
      { what: 'Joints, collar and hood among them', how: joints.join(', '), value: String(takeOff.joints) },
      {
        what: 'Screws',
        how: 'three to each metal joint of these sizes',
        value: String(takeOff.screws),
        source: allowance('least-screws'),
      },
      {
        what: 'Bands',
        how: 'two to each end of flex duct',
        value: String(takeOff.bands),
        source: allowance('bands-per-flex-end'),
      },
      {
        what: 'Hangers',
        how: `every ${ductLength.showShort(takeOffDefaults.flexSpacing, units)} of flexible and ${ductLength.showShort(takeOffDefaults.rigidSpacing, units)} of rigid duct, between its ends`,
        value: String(takeOff.hangers),
        source: allowance('flex-hanger-spacing'),
      },
      ...takeOff.flex
        .filter(({ amount }) => amount > 0)
        .map(({ diameter, amount }) => ({
          what: `Flex duct, ${ductDiameter.showShort(diameter, units)}`,
          how: `the run and 2 × ${smallLength.showShort(takeOffDefaults.flexTrim, units)} for each length`,
          value: ductLength.showShort(metres(amount), units),
          source: allowance('flex-trim'),
        })),
      {
        what: 'Wire connectors',
        how: `${story.splices} splices + ${story.connectors - story.splices} spare`,
        value: String(story.connectors),
        source: allowance('splices-at-fan'),
      },
    ],
    sources: citations(
      allowance('least-screws'),
      allowance('bands-per-flex-end'),
      allowance('flex-hanger-spacing'),
      allowance('rigid-hanger-spacing'),
      allowance('splices-at-fan'),
    ),
    table: {
      title: 'Take-off',
      columns: ['what', 'size', 'how many', 'note'],
      rows: rows.map(({ item, size, quantity, note }) => [item, size, quantity, note]),
    },
  };
}

/** Foil tape by length, joint by joint, with waste and whole rolls. */
export function ductTape({ takeOff, units }: PartsStory): Finding | undefined {
  if (takeOff.joints === 0) return undefined;
  const { wraps, endLap, waste, tapeRoll } = takeOffDefaults;
  const bare = metres(takeOff.tape / (1 + waste));
  const steps: Step[] = takeOff.jointsBySize.map(({ diameter, amount }) => ({
    what: `${amount} joints of ${ductDiameter.showShort(diameter, units)}`,
    how: `${amount} × (${wraps} × π × ${ductDiameter.showShort(diameter, units)} + ${smallLength.showShort(endLap, units)})`,
    value: smallLength.showShort(metres(amount * (wraps * Math.PI * diameter + endLap)), units),
    source: allowance('joint-end-lap'),
  }));
  const tape = ductSealants['foil-tape'];
  return {
    id: 'duct-tape',
    weight: 'good',
    says: `Bring ${ductLength.show(takeOff.tape, units)} of foil tape, waste included: ${takeOff.tapeRolls} ${takeOff.tapeRolls === 1 ? 'roll' : 'rolls'} of ${ductLength.showShort(tapeRoll, units)}. ${ductSealants['cloth-tape'].name} is not for ducts: ${ductSealants['cloth-tape'].says.replace(/^Do not use it\. /, '').toLowerCase()}`,
    value: { number: takeOff.tape, unit: ductLength.siUnit, shown: ductLength.show(takeOff.tape, units) },
    working: [
      ...steps,
      {
        what: 'With waste',
        how: `${smallLength.showShort(bare, units)} × ${1 + waste}`,
        value: `${smallLength.showShort(takeOff.tape, units)}, ${ductLength.showShort(takeOff.tape, units)}`,
        source: allowance('waste'),
      },
      {
        what: 'Rolls',
        how: `${ductLength.showShort(takeOff.tape, units)} ÷ ${ductLength.showShort(tapeRoll, units)}, whole rolls`,
        value: String(takeOff.tapeRolls),
        source: allowance('tape-roll'),
      },
    ],
    sources: citations(cite(tape), cite(ductSealants['cloth-tape']), allowance('waste'), allowance('tape-roll')),
  };
}

/** Wrap by what it is worth once it is on, not by the number on the roll. */
export function insulationFinding({ takeOff, wrap, units, run }: PartsStory): Finding {
  const asked = cite(takeOffAllowances['wrap-resistance']);
  const flexible = run.pieces.some(({ kind }) => kind === 'flex');
  const wanted = insulation.show(wrap.asked, units);
  const flexSays = flexible ? ` Buy the flex duct insulated to ${wanted}.` : '';
  const base = { id: 'insulation', working: [], sources: citations(asked) } as const;
  if (wrap.found === null) {
    return {
      ...base,
      weight: 'caution',
      says: `No wrap is wanted: that is only for duct inside the warm part of the house. ${takeOffAllowances['wrap-resistance'].says}`,
    };
  }
  if (!wrap.found.found) {
    return {
      ...base,
      weight: 'caution',
      says: `No wrap listed here is worth ${wanted} once it is on: ask for two layers, or duct under loose fill, and let the inspector see it.${flexSays}`,
    };
  }
  const { wrap: blanket } = wrap.found;
  const area = squareMetres(takeOff.wrap ?? 0);
  const rigid = run.pieces.filter((piece) => piece.kind === 'rigid');
  const steps: Step[] = rigid.map((piece) => ({
    what: `Around ${ductLength.showShort(piece.length, units)} of ${ductDiameter.showShort(piece.diameter, units)} rigid duct`,
    how: `(π × ${ductDiameter.showShort(piece.diameter, units)} + ${smallLength.showShort(blanket.stretchOutAllowance, units)}) × ${ductLength.showShort(piece.length, units)}`,
    value: roomArea.showShort(
      squareMetres((Math.PI * piece.diameter + blanket.stretchOutAllowance) * piece.length),
      units,
    ),
    source: cite(blanket.stretchOut),
  }));
  const unsaid = wrap.told ? '' : ` Nobody said how much is wanted: taken as ${wanted}.`;
  return {
    ...base,
    weight: wrap.told ? 'good' : 'advice',
    says:
      area > 0
        ? `Wrap the rigid duct with ${smallLength.showShort(blanket.nominalThickness, units)} blanket, ${toBuy(roomArea, area, units)}: ${insulation.show(blanket.installedResistance, units)} once it is on.${flexSays}${unsaid}`
        : `No rigid duct is to be wrapped.${flexSays}${unsaid}`,
    value: { number: area, unit: roomArea.siUnit, shown: roomArea.show(area, units) },
    working: [
      { what: 'Wanted', value: wanted, source: asked },
      ...(area > 0
        ? [
            {
              what: `${smallLength.showShort(blanket.nominalThickness, units)} blanket, once it is on`,
              value: insulation.show(blanket.installedResistance, units),
              source: cite(blanket.resistance),
            },
            ...steps,
          ]
        : []),
    ],
    sources: citations(asked, ...(area > 0 ? [cite(blanket.resistance), cite(blanket.stretchOut)] : [])),
  };
}

/** How far the duct falls to the outside, when it runs level. */
export function pitchFinding({ run, units }: PartsStory): Finding | undefined {
  if (run.length === 0) return undefined;
  const drop = dropOverRun(run.length, slope);
  return {
    id: 'duct-pitch',
    weight: 'advice',
    says: run.endsOnRoof
      ? `Let the level part of a run to the roof fall away from the fan to a trap at the foot of the riser, 1/4 in for each foot: ${smallLength.show(drop, units)} if all of it ran level. What settles in the riser runs back.`
      : `Hang a level run so that it falls ${smallLength.show(drop, units)} to the outside, and cut the hood opening that much lower.`,
    value: { number: drop, unit: smallLength.siUnit, shown: smallLength.show(drop, units) },
    working: [
      {
        what: 'Fall to the outside',
        how: `${ductLength.showShort(run.length, units)} × 1/4 in for each foot`,
        value: smallLength.showShort(drop, units),
        source: allowance('slope'),
      },
      {
        what: 'Least fall that drains',
        how: `${ductLength.showShort(run.length, units)} × 1/8 in for each foot`,
        value: smallLength.showShort(dropOverRun(run.length, leastSlope), units),
        source: allowance('least-slope'),
      },
    ],
    sources: citations(allowance('slope')),
  };
}
