import { z } from 'zod';
import { pascals } from '#quantity/units.ts';
import combustionFile from '../../knowledge/safety/combustion.json' with { type: 'json' };
import { checked } from './checked.ts';
import { figure, printedFigures, printedValue, sentence } from './figure.ts';
import { citationFields, cite } from './sources.ts';

const limit = z
  .strictObject({ name: z.string(), depressurisation: printedValue('Pa', pascals), ...citationFields })
  .transform((entry) => ({
    name: entry.name,
    depressurisation: entry.depressurisation,
    citation: cite(entry),
    ...(entry.note === undefined ? {} : { note: entry.note }),
  }));

const partsPerMillion = figure('ppm', (value) => value);

const combustion = checked(
  'knowledge/safety/combustion.json',
  z.strictObject({
    limits: z.strictObject({
      'natural-draft': limit,
      unvented: limit,
      'solid-fuel': limit,
      'induced-draft': limit,
      'power-vented': limit,
      sealed: limit,
      unknown: limit,
    }),
    garage: limit,
    'carbon-monoxide': z.strictObject({ raised: partsPerMillion, high: partsPerMillion }),
    sentences: z.strictObject({
      'carbon-monoxide-alarm': sentence,
      spillage: sentence,
      'carbon-monoxide-high': sentence,
      'appliance-in-bath-zone': sentence,
      'bath-zone-unknown': sentence,
      'house-pressure': sentence,
      'house-pressure-unknown': sentence,
      'spillage-unknown': sentence,
      'bath-zone-not-asked': sentence,
      'bath-zone-not-confirmed': sentence,
      'natural-draft': sentence,
      unvented: sentence,
      'solid-fuel': sentence,
      'fan-assisted': sentence,
      'appliances-unknown': sentence,
      'none-not-confirmed': sentence,
      'sealed-not-confirmed': sentence,
      'house-pressure-not-estimated': sentence,
      'garage-air': sentence,
      'carbon-monoxide-raised': sentence,
      'carbon-monoxide-alarm-needed': sentence,
      'estimate-clears-nothing': sentence,
    }),
    figures: printedFigures,
    rules: z.strictObject({
      'spillage-decides': sentence,
      'canadian-table': sentence,
      'rater-protocol': sentence,
      'local-code-governs': sentence,
    }),
  }),
  combustionFile,
);

const { limits, garage, 'carbon-monoxide': carbonMonoxide } = combustion;

/** Where the lines are drawn, in the form `combustionJudgement` takes, with the citation of each kind of appliance. */
export const combustionLimits = {
  depressurisation: {
    'natural draft': limits['natural-draft'].depressurisation,
    unvented: limits.unvented.depressurisation,
    'solid fuel': limits['solid-fuel'].depressurisation,
    'induced draft': limits['induced-draft'].depressurisation,
    'power vented': limits['power-vented'].depressurisation,
    sealed: limits.sealed.depressurisation,
    unknown: limits.unknown.depressurisation,
  },
  garage: garage.depressurisation,
  carbonMonoxideRaised: carbonMonoxide.raised.value,
  carbonMonoxideHigh: carbonMonoxide.high.value,
  entries: { ...limits, garage },
};

/** What each code of `combustionJudgement` says to people, with what it rests on. */
export const combustionSentences = combustion.sentences;

/** Background to give when asked. */
export const combustionBackground = combustion.rules;

/** Published figures for looking up, as printed. */
export const combustionFigures = combustion.figures;
