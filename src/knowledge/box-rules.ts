import { z } from 'zod';
import { cubicInches } from '#quantity/units.ts';
import editionsFile from '../../knowledge/electrical/box-editions.json' with { type: 'json' };
import rulesFile from '../../knowledge/electrical/box-rules.json' with { type: 'json' };
import volumesFile from '../../knowledge/electrical/conductor-volumes.json' with { type: 'json' };
import boxesFile from '../../knowledge/electrical/standard-boxes.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields } from './sources.ts';

const inches = z
  .strictObject({ value: z.number().positive(), unit: z.literal('in^3') })
  .transform(({ value }) => cubicInches(value));
const volume = z.strictObject({
  awg: z.literal([18, 16, 14, 12, 10, 8, 6]),
  freeSpace: inches,
  printedMetric: z.strictObject({ value: z.number().positive(), unit: z.literal('cm^3') }),
  ...citationFields,
});

/** The free space of one wire of each size, as printed. */
export const conductorVolumes = checked(
  'knowledge/electrical/conductor-volumes.json',
  z.strictObject({
    'awg-18': volume,
    'awg-16': volume,
    'awg-14': volume,
    'awg-12': volume,
    'awg-10': volume,
    'awg-8': volume,
    'awg-6': volume,
  }),
  volumesFile,
);

export type StandardBoxId = keyof typeof boxesFile;

const boxesById = checked(
  'knowledge/electrical/standard-boxes.json',
  z.record(
    z.string(),
    z.strictObject({
      kind: z.literal([
        'octagon',
        'square',
        'device',
        'masonry-gang',
        'fs-single',
        'fd-single',
        'fs-multiple',
        'fd-multiple',
      ]),
      /** As said in the trade: "4 x 1-1/2 in square". */
      name: z.string(),
      /** As printed, in inches: "4 x 1-1/2". */
      size: z.string(),
      volume: inches,
      ...citationFields,
    }),
  ),
  boxesFile,
);

/** The standard metal boxes in the order of the printed table. Masonry, FS and FD volumes are for each gang. */
export const standardBoxes = Object.entries(boxesById).map(([id, box]) => ({ id: id as StandardBoxId, ...box }));
export type StandardBox = (typeof standardBoxes)[number];

const says = { says: z.string(), ...citationFields };
const rule = z.strictObject({ ...says, allowances: z.number().nonnegative() });
const grounds = z.strictObject({
  ...says,
  first: z.number(),
  /** `null` when the first allowance covers any number of grounds. */
  firstCovers: z.number().nullable(),
  furtherEach: z.number(),
  isolatedSet: z.enum(['own-allowance', 'with-the-rest']),
});
const barrier = z.strictObject({ ...says, volume: inches });

/** What each thing in a box counts, in words and in allowances. */
export const boxRules = checked(
  'knowledge/electrical/box-rules.json',
  z.strictObject({
    'spliced-or-terminated': rule,
    through: rule,
    loop: rule,
    pigtail: rule,
    'fixture-wire': rule,
    'small-fittings': rule,
    canopy: z.strictObject({ ...says, upTo: z.number(), thinnerThan: z.literal([18, 16, 14, 12, 10, 8, 6]) }),
    clamps: rule,
    'outside-connector': rule,
    'support-fitting': rule,
    device: rule,
    'wide-device': rule,
    'grounds-to-2017': grounds,
    'grounds-from-2020': grounds,
    'terminal-block': rule,
    'box-volume': z.strictObject(says),
    'barrier-metal': barrier,
    'barrier-nonmetallic': barrier,
    'not-marked': z.strictObject(says),
    'fan-compartment': z.strictObject(says),
    'thick-wire': z.strictObject(says),
    fits: z.strictObject(says),
  }),
  rulesFile,
);
type BoxRuleId = keyof typeof boxRules;

const edition = z.strictObject({
  grounds: z.enum(['grounds-to-2017', 'grounds-from-2020']),
  countsTerminalBlocks: z.boolean(),
  ...citationFields,
});

/** The editions of the National Electrical Code that are known here, and how they differ. No building code year is one. */
export const electricalCodeEditions = checked(
  'knowledge/electrical/box-editions.json',
  z.strictObject({ 2014: edition, 2017: edition, 2020: edition, 2023: edition, 2026: edition }),
  editionsFile,
);
export type ElectricalCodeEdition = keyof typeof editionsFile;

const freeSpace = {
  18: conductorVolumes['awg-18'].freeSpace,
  16: conductorVolumes['awg-16'].freeSpace,
  14: conductorVolumes['awg-14'].freeSpace,
  12: conductorVolumes['awg-12'].freeSpace,
  10: conductorVolumes['awg-10'].freeSpace,
  8: conductorVolumes['awg-8'].freeSpace,
  6: conductorVolumes['awg-6'].freeSpace,
} as const;

const rulesOf = ({ grounds: groundRule, countsTerminalBlocks }: z.output<typeof edition>) => {
  const { first, firstCovers, furtherEach, isolatedSet } = boxRules[groundRule];
  return {
    freeSpace,
    conductor: {
      'spliced-or-terminated': boxRules['spliced-or-terminated'].allowances,
      through: boxRules.through.allowances,
      loop: boxRules.loop.allowances,
      pigtail: boxRules.pigtail.allowances,
      'fixture-wire': boxRules['fixture-wire'].allowances,
    },
    deviceGang: boxRules.device.allowances,
    clamps: boxRules.clamps.allowances,
    supportFittingType: boxRules['support-fitting'].allowances,
    terminalBlock: countsTerminalBlocks ? boxRules['terminal-block'].allowances : 0,
    grounds: { first, firstCovers: firstCovers ?? Number.POSITIVE_INFINITY, furtherEach, isolatedSet },
    canopy: { upTo: boxRules.canopy.upTo, thinnerThan: boxRules.canopy.thinnerThan },
  };
};

/** The count rules of every edition, as the engine takes them. */
export const boxFillRules = {
  2014: rulesOf(electricalCodeEditions[2014]),
  2017: rulesOf(electricalCodeEditions[2017]),
  2020: rulesOf(electricalCodeEditions[2020]),
  2023: rulesOf(electricalCodeEditions[2023]),
  2026: rulesOf(electricalCodeEditions[2026]),
} satisfies Record<ElectricalCodeEdition, unknown>;

/** What an unmarked barrier takes from a box. */
export const barrierVolumes = {
  metal: boxRules['barrier-metal'].volume,
  nonmetallic: boxRules['barrier-nonmetallic'].volume,
};

const ruleOfLine = {
  'spliced-or-terminated': 'spliced-or-terminated',
  through: 'through',
  loop: 'loop',
  pigtail: 'pigtail',
  'fixture-wire': 'fixture-wire',
  'fixture-wire-left-out': 'canopy',
  devices: 'device',
  clamps: 'clamps',
  stud: 'support-fitting',
  hickey: 'support-fitting',
  'terminal-blocks': 'terminal-block',
} as const satisfies Record<string, BoxRuleId>;

/** The rule behind one line of a box fill, for its words and its source. */
export const boxRuleOfLine = (
  what: keyof typeof ruleOfLine | 'grounds' | 'isolated-grounds',
  inEdition: ElectricalCodeEdition,
) =>
  boxRules[
    what === 'grounds' || what === 'isolated-grounds' ? electricalCodeEditions[inEdition].grounds : ruleOfLine[what]
  ];
