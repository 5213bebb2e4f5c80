import { type DuctTakeOff, ductTakeOff } from '#engine/take-off/duct-take-off.ts';
import { wrapForResistance } from '#engine/take-off/duct-wrap.ts';
import { wireConnectors } from '#engine/take-off/splices.ts';
import type { UnitSystem } from '#interview/question.ts';
import { observations } from '#knowledge/circuit-rules.ts';
import {
  cableTail,
  ductSealants,
  ductWraps,
  spareConnectors,
  splicesExpected,
  takeOffDefaults,
  wrapResistanceAsked,
} from '#knowledge/materials.ts';
import type { Kind } from '#quantity/kind.ts';
import { ductDiameter, ductLength, roomArea, smallLength } from '#quantity/kinds.ts';
import { inEach, type Metres, metres, squareMetres } from '#quantity/units.ts';
import { boxText } from '../questions/box-reading.ts';
import { sidesText } from '../questions/size-reading.ts';
import type { PartsInputs } from './parts-inputs.ts';
import { type FittingToBuy, type RunToBuy, runToBuy } from './parts-run.ts';

/** One line of the list. */
export interface PartRow {
  readonly group: 'Duct' | 'Joints' | 'Insulation' | 'Wiring' | 'Fan';
  readonly item: string;
  readonly size: string;
  readonly quantity: string;
  readonly note: string;
}

/** Everything the list is told from. */
export interface PartsStory {
  readonly inputs: PartsInputs;
  readonly units: UnitSystem;
  readonly run: RunToBuy;
  readonly takeOff: DuctTakeOff;
  readonly wrap: ReturnType<typeof wrapWanted>;
  readonly splices: number;
  readonly connectors: number;
}

/** The resistance wanted, and the wrap that gives it once it is on. Bare duct wants none. */
function wrapWanted({ insulation }: PartsInputs) {
  const told = insulation !== null;
  const asked = insulation ?? wrapResistanceAsked;
  return { told, asked, found: asked === 0 ? null : wrapForResistance(asked, ductWraps) };
}

/** Hot, neutral and ground at the fan, one more for each load apart, and those of a new control. */
function splicesIn({ unit, control }: PartsInputs): number {
  const further = unit === null ? 2 : ['light', 'heater'].filter((load) => unit.includes(load)).length;
  const { atFan, forFurtherLoad, atControl } = splicesExpected;
  return atFan + further * forFurtherLoad + (control === 'keep' ? 0 : atControl);
}

export function partsStory(inputs: PartsInputs, units: UnitSystem): PartsStory {
  const run = runToBuy(inputs.run, inputs.collar);
  const wrap = wrapWanted(inputs);
  const splices = splicesIn(inputs);
  return {
    inputs,
    units,
    run,
    wrap,
    takeOff: ductTakeOff(
      run.pieces,
      takeOffDefaults,
      wrap.found?.found ? wrap.found.wrap.stretchOutAllowance : undefined,
    ),
    splices,
    connectors: wireConnectors({ splices, spare: spareConnectors }),
  };
}

const sizeText = ({ diameter, to }: FittingToBuy, units: UnitSystem): string =>
  `${ductDiameter.showShort(diameter, units)}${to === undefined ? '' : ` to ${ductDiameter.showShort(to, units)}`}`;

/** A length or an area to buy: never rounded down. */
export const toBuy = <Q extends number>(kind: Kind<Q>, amount: Q, units: UnitSystem): string =>
  inEach(units, (system) => {
    const { unit, of } = kind.scale(system);
    const steps = system === 'metric' ? 10 : 1;
    return `${Math.ceil(of(amount) * steps - 1e-6) / steps} ${unit.replace('ft^2', 'sq ft').replace('m^2', 'm²')}`;
  });

const many = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;

function ductRows({ takeOff, run, units, wrap }: PartsStory): PartRow[] {
  const wide = (diameter: Metres) => ductDiameter.showShort(diameter, units);
  const stick = ductLength.showShort(takeOffDefaults.rigidStick, units);
  const bag = ductLength.showShort(takeOffDefaults.flexBag, units);
  const row = (item: string, size: string, quantity: string, note = ''): PartRow => ({
    group: 'Duct',
    item,
    size,
    quantity,
    note,
  });
  return [
    ...takeOff.sticks
      .filter(({ amount }) => amount > 0)
      .map(({ diameter, amount }) => row('Rigid duct', wide(diameter), many(amount, 'stick'), `${stick} each`)),
    ...takeOff.flex
      .filter(({ amount }) => amount > 0)
      .map(({ diameter, amount }) => {
        const bags = takeOff.flexBags.find((each) => each.diameter === diameter)?.amount ?? 0;
        const insulated = wrap.asked > 0 ? 'insulated; ' : '';
        return row(
          'Flex duct',
          wide(diameter),
          toBuy(ductLength, metres(amount), units),
          `${insulated}${many(bags, 'bag')} of ${bag}; pull it straight and trim it`,
        );
      }),
    ...run.fittings.map((fitting) => row(fitting.name, sizeText(fitting, units), String(fitting.count))),
    ...(run.end ? [row(run.end.name, sizeText(run.end, units), '1', 'with its flap, and a collar of this size')] : []),
  ];
}

function jointRows({ takeOff, units }: PartsStory): PartRow[] {
  const row = (item: string, quantity: string, note: string, size = ''): PartRow => ({
    group: 'Joints',
    item,
    size,
    quantity,
    note,
  });
  return [
    row(
      ductSealants['foil-tape'].name,
      toBuy(ductLength, takeOff.tape, units),
      `${many(takeOff.tapeRolls, 'roll')} of ${ductLength.showShort(takeOffDefaults.tapeRoll, units)}; a tenth for waste`,
    ),
    ...(takeOff.screws > 0 ? [row('Sheet-metal screws', String(takeOff.screws), 'none through flex duct')] : []),
    ...(takeOff.bands > 0 ? [row('Bands or clamps', String(takeOff.bands), 'one on the core, one on the jacket')] : []),
    ...(takeOff.hangers > 0 ? [row('Hangers or straps', String(takeOff.hangers), 'wide straps for flex duct')] : []),
  ];
}

function insulationRows({ takeOff, wrap, units }: PartsStory): PartRow[] {
  if (!wrap.found?.found || takeOff.wrap === undefined || takeOff.wrap === 0) return [];
  return [
    {
      group: 'Insulation',
      item: 'Duct wrap',
      size: `${smallLength.showShort(wrap.found.wrap.nominalThickness, units)} thick`,
      quantity: toBuy(roomArea, squareMetres(takeOff.wrap), units),
      note: 'around the rigid duct, closing flap included',
    },
  ];
}

/** 14 AWG copper on 15 A, 12 AWG on 20 A; the electrician says so where the breaker is not known. */
function cableSize({ breaker, unit }: PartsInputs): string {
  const cores = unit === null || unit === 'fan-only' ? 2 : 3;
  if (breaker === 15) return `14/${cores} with ground`;
  return breaker === 20 ? `12/${cores} with ground` : `${cores} wires with ground, thick enough for the breaker`;
}

function wiringRows({ inputs, connectors, units }: PartsStory): PartRow[] {
  const { control, cable, box } = inputs;
  const row = (item: string, size: string, quantity: string, note: string): PartRow => ({
    group: 'Wiring',
    item,
    size,
    quantity,
    note,
  });
  const label = observations['control-wanted'].options.find(({ id }) => id === control)?.label;
  return [
    ...(control !== null && control !== 'keep' && label !== undefined
      ? [row(label, '', '1', 'rated for a motor; /power says what it needs')]
      : []),
    row('Wire connectors', '', String(connectors), 'listed for stranded to solid wire'),
    row(
      'Box',
      box === null ? '' : boxText(box),
      box === null ? '' : '1',
      box === null
        ? 'see /boxfill for what it has to hold'
        : 'if a new one goes in; /boxfill says whether it holds all',
    ),
    ...(cable === null
      ? []
      : [
          row(
            'Cable',
            cableSize(inputs),
            toBuy(ductLength, metres(cable + 2 * cableTail), units),
            'the run and a tail at each end; an electrician says which cable',
          ),
          row('Cable clamps', '', '2', 'listed for the cable and the knockout'),
        ]),
  ];
}

const fanRows = ({ inputs, units }: PartsStory): PartRow[] => [
  {
    group: 'Fan',
    item: 'Fan with housing and grille',
    size: inputs.grille === null ? '' : sidesText(inputs.grille, units),
    quantity: '1',
    note: 'check the label against the plan before the old one comes out',
  },
];

/** The whole list, in the order it is loaded. */
export const partRows = (story: PartsStory): readonly PartRow[] => [
  ...fanRows(story),
  ...ductRows(story),
  ...jointRows(story),
  ...insulationRows(story),
  ...wiringRows(story),
];
