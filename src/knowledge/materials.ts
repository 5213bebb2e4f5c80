import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { metres, ratio, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import sealantsFile from '../../knowledge/materials/duct-sealants.json' with { type: 'json' };
import wrapFile from '../../knowledge/materials/duct-wrap.json' with { type: 'json' };
import framingFile from '../../knowledge/materials/framing.json' with { type: 'json' };
import allowancesFile from '../../knowledge/materials/take-off-allowances.json' with { type: 'json' };
import evidenceFile from '../../knowledge/materials/tape-evidence.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields } from './sources.ts';

const figure = <const Unit extends string>(...units: readonly Unit[]) =>
  z.strictObject({
    says: z.string(),
    value: z.number().positive(),
    unit: z.literal(units),
    ...citationFields,
  });

const allowance = figure('1', 'in', 'ft', 'in/ft', 'degF', 'lbf', 'Rvalue');
const member = figure('in');
const sealant = z.strictObject({
  name: z.string(),
  says: z.string(),
  /** 1 is best. A ranking, not a lifetime. */
  rank: z.number().int().positive(),
  marks: z.array(z.string()),
  ...citationFields,
});
const finding = z.strictObject({
  says: z.string(),
  carriesOver: z.boolean(),
  value: z.union([z.number(), z.array(z.number())]).optional(),
  unit: z.string().optional(),
  ...citationFields,
});

export type AllowanceId = keyof typeof allowancesFile;

/** Waste, laps, spacings and stock lengths a take-off is made with, as printed, each with its source. */
export const takeOffAllowances = checked(
  'knowledge/materials/take-off-allowances.json',
  z.record(z.string(), allowance),
  allowancesFile,
) as Readonly<Record<AllowanceId, z.output<typeof allowance>>>;

const length = (id: AllowanceId) => {
  const { value, unit } = takeOffAllowances[id];
  return metres(toSi(value, unit, 'm'));
};
const plain = (id: AllowanceId) => takeOffAllowances[id].value;
/** A fall or a sag for each length, the same in any unit: half an inch per foot is 1/24. */
const perLength = (id: AllowanceId) => (plain(id) * toSi(1, 'in', 'm')) / toSi(1, 'ft', 'm');

/** What a take-off of duct is made with. */
export const takeOffDefaults = {
  wraps: plain('joint-wraps'),
  endLap: length('joint-end-lap'),
  waste: ratio(plain('waste')),
  leastScrews: plain('least-screws'),
  screwSpacing: length('screw-spacing'),
  bandsPerFlexEnd: plain('bands-per-flex-end'),
  flexSpacing: length('flex-hanger-spacing'),
  rigidSpacing: length('rigid-hanger-spacing'),
  rigidStick: length('rigid-stick'),
  flexBag: length('flex-bag'),
  flexTrim: length('flex-trim'),
  tapeRoll: length('tape-roll'),
  masticBand: length('mastic-band'),
  masticThickness: length('mastic-thickness'),
};

/** Further figures a take-off and a fit are made with. */
export const tapeWidth = length('tape-width');
export const turnOverlap = ratio(plain('turn-overlap'));
export const sagPerLength = perLength('sag');
export const slope = perLength('slope');
export const leastSlope = perLength('least-slope');
export const besideHousing = length('beside-housing');
export const openingGap = length('opening-gap');
export const flangeOverlap = length('flange-overlap');
export const spareConnectors = plain('spare-connectors');
/** Splices to bring connectors for: at the fan, for each further load, and in the box of a new control. */
export const splicesExpected = {
  atFan: plain('splices-at-fan'),
  forFurtherLoad: plain('splices-for-further-load'),
  atControl: plain('splices-at-control'),
};
/** What a run of cable is cut longer at each end. */
export const cableTail = length('cable-tail');
/** Diameters of straight duct before the first bend, and of the bend at its centre line. */
export const bendsAsked = { straightDiameters: plain('straight-before-bend'), radiusDiameters: plain('bend-radius') };
/** The resistance the duct is wrapped to outside the warm part of the house. */
export const wrapResistanceAsked = squareMetreKelvinsPerWatt(toSi(plain('wrap-resistance'), 'Rvalue', 'RSI'));

export type FramingId = keyof typeof framingFile;

/** Actual sizes of the members that make a ceiling, as printed. */
export const framing = checked(
  'knowledge/materials/framing.json',
  z.record(z.string(), member),
  framingFile,
) as Readonly<Record<FramingId, z.output<typeof member>>>;

/** The actual size of a member. */
export const memberSize = (id: FramingId) => metres(toSi(framing[id].value, framing[id].unit, 'm'));

const inch = z
  .strictObject({ value: z.number().positive(), unit: z.literal('in') })
  .transform(({ value }) => metres(toSi(value, 'in', 'm')));

const wraps = checked(
  'knowledge/materials/duct-wrap.json',
  z.record(
    z.string(),
    z.strictObject({
      nominalThickness: inch,
      installedThickness: inch,
      stretchOut: z.strictObject({ value: z.number().positive(), unit: z.literal('in'), ...citationFields }),
      installedResistance: z
        .strictObject({ value: z.number().positive(), unit: z.literal('Rvalue'), ...citationFields })
        .optional(),
    }),
  ),
  wrapFile,
);

/** Insulation wrap by thickness, thinnest first, with what it is worth once it is wrapped. */
export const ductWraps = Object.entries(wraps).flatMap(([id, { stretchOut, installedResistance, ...wrap }]) =>
  installedResistance === undefined
    ? []
    : [
        {
          id: id as keyof typeof wrapFile,
          ...wrap,
          stretchOutAllowance: metres(toSi(stretchOut.value, 'in', 'm')),
          stretchOut,
          installedResistance: squareMetreKelvinsPerWatt(toSi(installedResistance.value, 'Rvalue', 'RSI')),
          resistance: installedResistance,
        },
      ],
);

/** How much longer than the bare duct to cut wrap of a thickness, whether or not its resistance is listed. */
export const wrapAllowance = (id: keyof typeof wrapFile) => metres(toSi(wrapFile[id].stretchOut.value, 'in', 'm'));

/** What ageing tests found. Only what `carriesOver` may be said of bath ducts; lifetimes under test heat may not. */
export const tapeEvidence = checked(
  'knowledge/materials/tape-evidence.json',
  z.record(z.string(), finding),
  evidenceFile,
) as Readonly<Record<keyof typeof evidenceFile, z.output<typeof finding>>>;

/** What a joint can be sealed with. */
export const ductSealants = checked(
  'knowledge/materials/duct-sealants.json',
  z.strictObject({ mastic: sealant, 'foil-tape': sealant, 'foil-tape-181a': sealant, 'cloth-tape': sealant }),
  sealantsFile,
);
