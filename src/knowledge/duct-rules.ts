import { z } from 'zod';
import type { Metres, Ratio, SquareMetreKelvinsPerWatt } from '#quantity/units.ts';
import rulesFile from '../../knowledge/ducts/duct-rules.json' with { type: 'json' };
import { checked } from './checked.ts';
import { type Cited, cited, length, slope, thermalResistance } from './duct-measures.ts';
import { citationFields } from './sources.ts';

export type TerminationEdition = keyof typeof rulesFile.terminations;
export type DuctStatementId = keyof typeof rulesFile.statements;

/** How far an exhaust hood keeps from things, in one edition of the model code. Three distances, never one. */
export interface TerminationClearances extends Cited {
  readonly propertyLine: Metres;
  /** From openings into the house. */
  readonly openings: Metres;
  /** Which openings count: every one, or only those that open. */
  readonly openingsThatCount: 'every opening' | 'operable windows and doors, gravity intakes';
  /** The distance from an opening falls away for a hood at least this far above it. Absent where no such exception is printed. */
  readonly openingExceptionAbove?: Metres | undefined;
  readonly mechanicalIntake: Metres;
  /** The distance from an intake falls away for a hood at least this far above it. */
  readonly intakeExceptionAbove: Metres;
  /** A factory-built intake and exhaust terminal is excepted from the intake distance. */
  readonly factoryCombinationTerminal?: boolean | undefined;
}

/** A rule in one sentence, verb first. */
interface Rule extends Cited {
  readonly says: string;
  /** Editions of the model code it belongs to; every one where absent. */
  readonly editions?: readonly string[] | undefined;
}

interface Bounded {
  readonly bound: 'at least' | 'at most';
}

export interface DistanceRule extends Rule, Bounded {
  readonly distance: Metres;
}

/** A distance in diameters of the duct. */
export interface DiametersRule extends Rule, Bounded {
  readonly diameters: number;
}

export interface SlopeRule extends Rule, Bounded {
  /** Fall for each length along. */
  readonly slope: Ratio;
}

export interface InsulationRule extends Rule, Bounded {
  readonly resistance: SquareMetreKelvinsPerWatt;
}

/** Sheet gauge, where a smaller number is thicker metal: the rule allows this gauge and any smaller number. */
export interface MetalRule extends Rule {
  readonly gauge: number;
}

export interface Statement extends Rule {
  /** True where the job does not go on against it. */
  readonly stop?: boolean | undefined;
}

const rule = {
  says: z.string().regex(/\.$/, 'end the sentence'),
  editions: z.array(z.string()).optional(),
  ...citationFields,
};
const bound = z.enum(['at least', 'at most']);
const entries = <Schema extends z.ZodType>(schema: Schema) => z.record(z.string(), schema);

const rules = checked(
  'knowledge/ducts/duct-rules.json',
  z.strictObject({
    terminations: entries(
      z
        .strictObject({
          propertyLine: length,
          openings: length,
          openingsThatCount: z.enum(['every opening', 'operable windows and doors, gravity intakes']),
          openingExceptionAbove: length.optional(),
          mechanicalIntake: length,
          intakeExceptionAbove: length,
          factoryCombinationTerminal: z.boolean().optional(),
          ...citationFields,
        })
        .transform(cited),
    ),
    distances: entries(z.strictObject({ ...rule, distance: length, bound }).transform(cited)),
    diameters: entries(z.strictObject({ ...rule, diameters: z.number(), bound }).transform(cited)),
    slopes: entries(z.strictObject({ ...rule, slope, bound }).transform(cited)),
    insulation: entries(z.strictObject({ ...rule, resistance: thermalResistance, bound }).transform(cited)),
    metal: entries(z.strictObject({ ...rule, gauge: z.int() }).transform(cited)),
    statements: entries(z.strictObject({ ...rule, stop: z.boolean().optional() }).transform(cited)),
  }),
  rulesFile,
);

type Keyed<Group extends keyof typeof rulesFile, Entry> = Readonly<Record<keyof (typeof rulesFile)[Group], Entry>>;

export const terminationClearances = rules.terminations as Keyed<'terminations', TerminationClearances>;
export const ductDistances = rules.distances as Keyed<'distances', DistanceRule>;
export const ductDiameterRules = rules.diameters as Keyed<'diameters', DiametersRule>;
export const ductSlopes = rules.slopes as Keyed<'slopes', SlopeRule>;
export const ductInsulation = rules.insulation as Keyed<'insulation', InsulationRule>;
export const ductMetal = rules.metal as Keyed<'metal', MetalRule>;
export const ductStatements = rules.statements as Keyed<'statements', Statement>;
