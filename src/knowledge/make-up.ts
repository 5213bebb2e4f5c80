import { z } from 'zod';
import { cubicMetresPerSecond, metres, pascals, ratio } from '#quantity/units.ts';
import transferAirFile from '../../knowledge/moisture/transfer-air.json' with { type: 'json' };
import { checked } from './checked.ts';
import { amount, assumed, figure, printedFigures, printedValue, sentence } from './figure.ts';
import { citationFields, cite } from './sources.ts';

const leakageArea = z
  .strictObject({
    name: z.string(),
    pressure: printedValue('Pa', pascals),
    'discharge-coefficient': z.number().positive(),
    ...citationFields,
  })
  .transform((entry) => ({
    name: entry.name,
    pressure: entry.pressure,
    dischargeCoefficient: ratio(entry['discharge-coefficient']),
    citation: cite(entry),
  }));

const exhaust = z
  .strictObject({ name: z.string(), airflow: amount('m^3/s', cubicMetresPerSecond), ...citationFields })
  .transform((entry) => ({ name: entry.name, airflow: entry.airflow, citation: cite(entry) }));

const transferAir = checked(
  'knowledge/moisture/transfer-air.json',
  z.strictObject({
    defaults: z.strictObject({
      'door-width': assumed('m', metres),
      'door-gap': assumed('m', metres),
      'grille-free-share': assumed('1', ratio),
      'leakage-exponent': assumed('1', ratio),
      'house-leakage': assumed('m^3/s', cubicMetresPerSecond),
      'air-changes-at-50': assumed('1', ratio),
    }),
    limits: z.strictObject({
      fine: figure('Pa', pascals),
      choked: figure('Pa', pascals),
      'door-drop': figure('1', ratio),
      'florida-room': figure('Pa', pascals),
      'programme-room': figure('Pa', pascals),
    }),
    figures: printedFigures,
    'leakage-area': z.strictObject({ ela: leakageArea, eqla: leakageArea }),
    exhausts: z.strictObject({
      'bath-fan': exhaust,
      'range-hood': exhaust,
      dryer: exhaust,
      'open-fireplace': exhaust,
    }),
    rules: z.strictObject({
      'calm-day': sentence,
      'measure-the-drop': sentence,
      'where-to-measure': sentence,
      'no-gap-in-62-2': sentence,
    }),
  }),
  transferAirFile,
);

/** What is assumed of doors, grilles and houses until somebody knows better, in SI. */
export const makeUpDefaults = transferAir.defaults;

/**
 * Pressures across a shut door: up to `fine` nobody need mind, past `choked` the fan suffers; the share of the airflow that
 * shutting it may cost; the rest by their rule.
 */
export const doorPressureLimits = transferAir.limits;

/** How the two leakage areas are defined, in the form `leakageArea` takes but for the density. */
export const leakageAreaDefinitions = transferAir['leakage-area'];

/** What other exhausts in a house usually draw. */
export const otherExhausts = transferAir.exhausts;

/** What must be said beside a door pressure or a house depressurisation. */
export const makeUpSentences = transferAir.rules;

/** Published figures for looking up, as printed. */
export const makeUpFigures = transferAir.figures;
