import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  metres,
  pascals,
  ratio,
  seconds,
  squareMetres,
} from '#quantity/units.ts';
import dwellingFile from '../../knowledge/airflow/dwelling-ventilation.json' with { type: 'json' };
import requiredFile from '../../knowledge/airflow/required-airflow.json' with { type: 'json' };
import { checked } from './checked.ts';
import { cited } from './duct-measures.ts';
import { printedValue, sentence } from './figure.ts';
import { type Citation, citationFields, cite } from './sources.ts';

/** Codes and standards whose exhaust rates are known here. */
export type LocalExhaustCodeId = keyof typeof requiredFile.codes;

/**
 * A rate as printed and in SI. Where both units are printed and differ by rounding, both stand; where one is printed the
 * other is the same rate.
 */
export interface PrintedRate {
  readonly printed: { readonly cfm?: number; readonly litresPerSecond?: number };
  readonly inchPound: CubicMetresPerSecond;
  readonly metric: CubicMetresPerSecond;
  readonly citation: Citation;
  readonly note?: string;
}

const plain = (value: number): number => value;
const fromCfm = (value: number) => cubicMetresPerSecond(toSi(value, 'cfm', 'm^3/s'));
const fromLitres = (value: number) => cubicMetresPerSecond(toSi(value, 'L/s', 'm^3/s'));

const rate = z
  .strictObject({ cfm: z.number().optional(), litresPerSecond: z.number().optional(), ...citationFields })
  .refine(({ cfm, litresPerSecond }) => (cfm ?? litresPerSecond) !== undefined, 'give cfm, litresPerSecond or both')
  .transform(({ cfm, litresPerSecond, ...entry }): PrintedRate => {
    const inchPound = cfm === undefined ? undefined : fromCfm(cfm);
    const metric = litresPerSecond === undefined ? undefined : fromLitres(litresPerSecond);
    return {
      printed: {
        ...(cfm === undefined ? {} : { cfm }),
        ...(litresPerSecond === undefined ? {} : { litresPerSecond }),
      },
      inchPound: (inchPound ?? metric) as CubicMetresPerSecond,
      metric: (metric ?? inchPound) as CubicMetresPerSecond,
      ...cited(entry),
    };
  });

/** A printed value with its citation, in SI. */
const citedValue = <Q extends number>(si: string, make: (value: number) => Q) =>
  z
    .strictObject({ value: z.number(), unit: z.string(), ...citationFields })
    .transform(({ value, unit, ...entry }) => ({ value: make(toSi(value, unit, si)), ...cited(entry) }));

const code = z.strictObject({
  name: z.string().min(1),
  bathroom: z.strictObject({ intermittent: rate, continuous: rate }),
  toiletRoom: z.strictObject({ intermittent: rate }).optional(),
  kitchen: z.strictObject({ intermittent: rate, continuous: rate.optional() }).optional(),
  /** The listed airflow must reach the rate at this static pressure. */
  listedAt: citedValue('Pa', pascals).optional(),
  testStandard: z
    .strictObject({ name: z.string(), ...citationFields })
    .transform(cited)
    .optional(),
  /** How long a fan without a window runs on. */
  overrun: citedValue('s', seconds).optional(),
});

const fixture = citedValue('m^3/s', cubicMetresPerSecond);

const required = checked(
  'knowledge/airflow/required-airflow.json',
  z.strictObject({
    codes: z.record(z.string(), code),
    guideline: z.strictObject({
      perArea: citedValue('m/s', plain),
      areaLimit: citedValue('m^2', squareMetres),
      least: citedValue('m^3/s', cubicMetresPerSecond),
      fixtures: z.strictObject({ toilet: fixture, shower: fixture, tub: fixture, jettedTub: fixture }),
      airChanges: citedValue('1/h', plain),
      ordinaryCeiling: citedValue('m', metres),
      runAfterBathing: citedValue('s', seconds),
      doorClearance: citedValue('m', metres),
      toiletCompartment: sentence,
      steamShower: sentence,
    }),
    window: z.record(
      z.string(),
      z
        .strictObject({
          glazing: printedValue('m^2', squareMetres),
          openableShare: printedValue('1', ratio),
          ...citationFields,
        })
        .transform(cited),
    ),
  }),
  requiredFile,
);

/** Exhaust rates by code or standard. */
export const localExhaust = required.codes as Readonly<Record<LocalExhaustCodeId, z.output<typeof code>>>;

/** The guideline for bathrooms with the citation of each figure. */
export const bathroomGuideline = required.guideline;

/** The same guideline as bare figures, the shape the engine takes. */
export const bathroomGuidelineFigures = {
  perArea: required.guideline.perArea.value,
  areaLimit: required.guideline.areaLimit.value,
  least: required.guideline.least.value,
  fixtures: {
    toilet: required.guideline.fixtures.toilet.value,
    shower: required.guideline.fixtures.shower.value,
    tub: required.guideline.fixtures.tub.value,
    jettedTub: required.guideline.fixtures.jettedTub.value,
  },
  airChangesPerHour: required.guideline.airChanges.value,
  ordinaryCeiling: required.guideline.ordinaryCeiling.value,
};

/** A window that some codes take instead of a fan. */
export const windowInstead = required.window as Readonly<
  Record<keyof typeof requiredFile.window, (typeof required.window)[string]>
>;

export type DwellingFormulaId = keyof typeof dwellingFile.formulas;

const formula = z
  .strictObject({
    name: z.string().min(1),
    perArea: z.strictObject({
      cfmPerSquareFoot: z.number(),
      litresPerSecondPerSquareMetre: z.number().optional(),
    }),
    perPerson: z.strictObject({ cfm: z.number(), litresPerSecond: z.number().optional() }),
    ...citationFields,
  })
  .transform(({ name, perArea, perPerson, ...entry }) => {
    const inchPound = {
      perArea: toSi(perArea.cfmPerSquareFoot, 'cfm/ft^2', 'm/s'),
      perPerson: fromCfm(perPerson.cfm),
    };
    const { litresPerSecondPerSquareMetre: area } = perArea;
    const { litresPerSecond: person } = perPerson;
    const metric =
      area === undefined || person === undefined
        ? inchPound
        : { perArea: toSi(area, 'L/s/m^2', 'm/s'), perPerson: fromLitres(person) };
    return { name, inchPound, metric, ...cited(entry) };
  });

const dwelling = checked(
  'knowledge/airflow/dwelling-ventilation.json',
  z.strictObject({
    formulas: z.record(z.string(), formula),
    table: z
      .strictObject({
        name: z.string(),
        areaUpTo: z.strictObject({ values: z.array(z.number()), unit: z.literal('ft^2') }),
        bedroomsUpTo: z.array(z.int()),
        airflow: z.strictObject({ values: z.array(z.array(z.number())), unit: z.literal('cfm') }),
        ...citationFields,
      })
      .refine(
        ({ areaUpTo, bedroomsUpTo, airflow: { values } }) =>
          values.length === areaUpTo.values.length + 1 && values.every((row) => row.length === bedroomsUpTo.length + 1),
        'the table needs one row more than areaUpTo and one column more than bedroomsUpTo',
      ),
    partTime: z
      .strictObject({
        runShare: z.strictObject({ values: z.array(z.number()), unit: z.literal('%') }),
        factor: z.array(z.number()),
        ...citationFields,
      })
      .refine(({ runShare, factor }) => runShare.values.length === factor.length, 'give one factor for each share'),
    balanced: z.strictObject({ value: z.number(), ...citationFields }).transform(cited),
  }),
  dwellingFile,
);

/** Whole-house airflow by formula: in the units printed first, and in the metric ones where they are printed too. */
export const dwellingFormulas = dwelling.formulas as Readonly<
  Record<DwellingFormulaId, (typeof dwelling.formulas)[string]>
>;

/** Whole-house airflow as the code tabulates it, in the shape the engine takes, with its citation. */
export const dwellingTable = {
  areaUpTo: dwelling.table.areaUpTo.values.map((value) => squareMetres(toSi(value, 'ft^2', 'm^2'))),
  bedroomsUpTo: dwelling.table.bedroomsUpTo,
  airflow: dwelling.table.airflow.values.map((row) => row.map(fromCfm)),
  citation: cite(dwelling.table),
};

/** How much more a fan must move that runs part of the time, in the shape the engine takes, with its citation. */
export const partTimeFactors = {
  table: dwelling.partTime.factor.map((factor, index) => ({
    runShare: ratio((dwelling.partTime.runShare.values[index] as number) / 100),
    factor: ratio(factor),
  })),
  citation: cite(dwelling.partTime),
};

/** What balanced ventilation with ducted supply may be multiplied by. */
export const balancedShare = dwelling.balanced;
