import { z } from 'zod';
import { ratio, seconds } from '#quantity/units.ts';
import energyFile from '../../knowledge/moisture/energy.json' with { type: 'json' };
import { checked } from './checked.ts';
import { assumed, printedFigures, sentence } from './figure.ts';

const plain = (value: number) => value;

const energy = checked(
  'knowledge/moisture/energy.json',
  z.strictObject({
    defaults: z.strictObject({
      'hours-per-day': assumed('s', seconds),
      'degree-days': assumed('K day', plain),
      'electricity-price': assumed('1', plain),
      'heat-price': assumed('1', plain),
      'heating-efficiency': assumed('1', ratio),
    }),
    efficacy: printedFigures,
    rules: z.strictObject({ 'heating-only': sentence, 'spread-evenly': sentence }),
  }),
  energyFile,
);

/**
 * What is assumed of running a fan until somebody knows better: seconds a day, degree-days in K·day, prices as printed on
 * bills (for a kilowatt-hour and for a therm).
 */
export const energyDefaults = energy.defaults;

/** Airflow for each watt that codes ask of fans, for looking up, as printed. */
export const efficacyFigures = energy.efficacy;

/** What must be said beside a running cost. */
export const energySentences = energy.rules;
