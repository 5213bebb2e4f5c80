import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { cubicMetres, metres, squareMetres } from '#quantity/units.ts';
import canadianRulesFile from '../../knowledge/electrical/canadian-box-rules.json' with { type: 'json' };
import canadianVolumesFile from '../../knowledge/electrical/canadian-conductor-volumes.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields } from './sources.ts';

const millilitres = z
  .strictObject({ value: z.number().positive(), unit: z.literal('mL') })
  .transform(({ value }) => cubicMetres(toSi(value, 'cm^3', 'm^3')));

const canadianVolume = z.strictObject({
  awg: z.literal([14, 12, 10, 8, 6]),
  freeSpace: millilitres,
  printedInches: z.strictObject({ value: z.number().positive(), unit: z.literal('in^3') }),
  ...citationFields,
});

/** The free space of one wire of each size under the Canadian code. */
export const canadianConductorVolumes = checked(
  'knowledge/electrical/canadian-conductor-volumes.json',
  z.strictObject({
    'awg-14': canadianVolume,
    'awg-12': canadianVolume,
    'awg-10': canadianVolume,
    'awg-8': canadianVolume,
    'awg-6': canadianVolume,
  }),
  canadianVolumesFile,
);

const canadianRule = z.strictObject({ says: z.string(), ...citationFields, conductors: z.number().nonnegative() });

/** What each thing in a box counts under the Canadian code. */
export const canadianBoxRules = checked(
  'knowledge/electrical/canadian-box-rules.json',
  z.strictObject({
    conductor: canadianRule,
    pigtail: canadianRule,
    'fixture-wire': canadianRule,
    'support-fitting': canadianRule,
    connectors: z.strictObject({ says: z.string(), ...citationFields, connectorsPerConductor: z.number().positive() }),
    device: canadianRule,
    'deep-device': z.strictObject({
      says: z.string(),
      ...citationFields,
      deeperThan: z
        .strictObject({ value: z.number(), unit: z.literal('cm') })
        .transform(({ value }) => metres(toSi(value, 'cm', 'm'))),
      spacePerDepth: z
        .strictObject({ value: z.number(), unit: z.literal('cm^3/cm') })
        .transform(({ value }) => squareMetres(toSi(value, 'cm^2', 'm^2'))),
    }),
    'likely-depth': z.strictObject({
      says: z.string(),
      ...citationFields,
      depth: z
        .strictObject({ value: z.number().positive(), unit: z.literal('cm') })
        .transform(({ value }) => metres(toSi(value, 'cm', 'm'))),
    }),
    'terminal-block': canadianRule,
    'bare-wire': canadianRule,
  }),
  canadianRulesFile,
);

/** The Canadian rules, as the engine takes them. */
export const canadianBoxFillRules = {
  freeSpace: {
    14: canadianConductorVolumes['awg-14'].freeSpace,
    12: canadianConductorVolumes['awg-12'].freeSpace,
    10: canadianConductorVolumes['awg-10'].freeSpace,
    8: canadianConductorVolumes['awg-8'].freeSpace,
    6: canadianConductorVolumes['awg-6'].freeSpace,
  },
  connectorsPerConductor: canadianBoxRules.connectors.connectorsPerConductor,
  conductorsPerDevice: canadianBoxRules.device.conductors,
  conductorsPerFitting: canadianBoxRules['support-fitting'].conductors,
  deepDevice: {
    deeperThan: canadianBoxRules['deep-device'].deeperThan,
    spacePerDepth: canadianBoxRules['deep-device'].spacePerDepth,
  },
};
