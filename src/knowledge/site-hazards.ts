import { z } from 'zod';
import siteHazardsFile from '../../knowledge/safety/site-hazards.json' with { type: 'json' };
import { checked } from './checked.ts';
import { printedFigures, sentence } from './figure.ts';

const siteHazards = checked(
  'knowledge/safety/site-hazards.json',
  z.strictObject({
    figures: printedFigures,
    rules: z.strictObject({
      'lead-ceiling-cut': sentence,
      'lead-area': sentence,
      'asbestos-plaster': sentence,
      vermiculite: sentence,
      'attic-work': sentence,
    }),
  }),
  siteHazardsFile,
);

/** Lead, asbestos, ladder and fall figures for looking up, as printed. */
export const siteHazardFigures = siteHazards.figures;

/** What to say of lead, asbestos and attics. */
export const siteHazardSentences = siteHazards.rules;
