import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { canBe, isWalkFact, signer, type WalkFactId } from './checklist-facts.ts';

/** Units as the lists print them: for the converter, and for people. */
const units = {
  in: { unit: 'in', si: 'm', word: ' in' },
  ft: { unit: 'ft', si: 'm', word: ' ft' },
  'ft^2': { unit: 'ft^2', si: 'm^2', word: ' sq ft' },
  'in^3': { unit: 'in^3', si: 'in^3', word: ' cubic inches' },
  'in/ft': { unit: String(1 / 12), si: '1', word: ' in for each foot' },
  cfm: { unit: 'cfm', si: 'm^3/s', word: ' cfm' },
  V: { unit: 'V', si: 'V', word: ' V' },
  degF: { unit: 'degF', si: 'degC', word: ' °F' },
  R: { unit: 'Rvalue', si: 'm^2 K/W', word: ' R' },
  dBA: { unit: 'dBA', si: 'dBA', word: ' dBA' },
  min: { unit: 'min', si: 's', word: ' minutes' },
  '1': { unit: '1', si: '1', word: '' },
} as const;

export type PrintedUnit = keyof typeof units;

/** The SI unit a value of this printed unit is given in; cubic inches stay cubic inches. */
export type SiUnit = (typeof units)[PrintedUnit]['si'];

/** One end of a range: as it is compared, and as people read it. */
export interface Bound {
  readonly si: number;
  /** "4 ft". */
  readonly shown: string;
}

/** One end of a range that may depend on a fact, such as the edition of the code. */
export interface Limit {
  readonly by: WalkFactId | null;
  readonly values: Readonly<Record<string, Bound>>;
  readonly otherwise: Bound;
}

/** A fact and the answers that count. Where not knowing does not count, it says why. */
export interface Condition {
  readonly fact: WalkFactId;
  readonly is: readonly string[];
  readonly because?: string | undefined;
}

export const conditionSchema = z
  .strictObject({
    fact: z.string().refine(isWalkFact, 'is no fact in knowledge/checklists/facts.json'),
    is: z.array(z.string()).min(1),
    because: z.string().endsWith('.').optional(),
  })
  .superRefine(({ fact, is, because }, { addIssue }) => {
    for (const value of is) {
      if (!canBe(fact, value)) addIssue({ code: 'custom', message: `${value} is no answer to ${fact}` });
    }
    if (is.includes('unknown') === (because !== undefined)) {
      addIssue({
        code: 'custom',
        message: 'list "unknown" among the answers, or say in "because" why it does not count',
      });
    }
  });

const factValues = z.record(z.string(), z.number());
const limitSchema = z.union([
  z.number(),
  z
    .strictObject({ by: z.string().refine(isWalkFact, 'is no fact'), values: factValues, otherwise: z.number() })
    .refine(({ by, values }) => Object.keys(values).every((value) => canBe(by, value)), 'has a value that is no answer')
    .refine(({ values }) => 'unknown' in values, 'say what not knowing means'),
]);

const named = { id: z.string(), label: z.string().max(60) };
const onlyIf = z.strictObject({ part: z.string(), is: z.array(z.string()).min(1) }).optional();
const loose = { optional: z.boolean().default(false), onlyIf };

const optionSchema = z.strictObject({
  id: z.string(),
  label: z.string().max(60),
  /** The answer stops the job; what to do now. */
  stops: z.string().endsWith('.').optional(),
  /** The answer is taken, with this remark. */
  advises: z.string().endsWith('.').optional(),
  /** Who may give this answer, where it is not whoever may sign the step. */
  signers: z.array(signer).optional(),
  /** On a step that each person does for himself: somebody else may give this answer. */
  byOthers: z.boolean().default(false),
  onlyWhen: z.array(conditionSchema).optional(),
});

const choice = z.strictObject({
  kind: z.literal('choice'),
  ...named,
  records: z.string().refine(isWalkFact, 'is no fact in knowledge/checklists/facts.json').optional(),
  options: z.array(optionSchema).min(2),
  ...loose,
});

const bound = (value: number, unit: PrintedUnit): Bound => ({
  si: toSi(value, units[unit].unit, units[unit].si),
  shown: unit === 'R' ? `R-${value}` : `${value}${units[unit].word}`,
});

function limit(printed: z.output<typeof limitSchema>, unit: PrintedUnit): Limit {
  if (typeof printed === 'number') return { by: null, values: {}, otherwise: bound(printed, unit) };
  const { by, values, otherwise } = printed;
  return {
    by,
    values: Object.fromEntries(Object.entries(values).map(([id, value]) => [id, bound(value, unit)])),
    otherwise: bound(otherwise, unit),
  };
}

/** A field that is there only when its value is. */
const given = <Key extends string, From, To>(
  key: Key,
  value: From | undefined,
  make: (value: From) => To,
): { readonly [Field in Key]?: To } => (value === undefined ? {} : ({ [key]: make(value) } as { [Field in Key]: To }));

const number = z
  .strictObject({
    kind: z.literal('number'),
    ...named,
    unit: z.enum(Object.keys(units) as [PrintedUnit, ...PrintedUnit[]]),
    least: limitSchema.optional(),
    most: limitSchema.optional(),
    /** Strictly below. */
    under: z.number().optional(),
    /** At least what an earlier step of the list recorded. */
    leastOf: z.strictObject({ step: z.string(), part: z.string() }).optional(),
    /** At most what another part of the same answer says. */
    mostOf: z.strictObject({ part: z.string(), says: z.string().endsWith('.') }).optional(),
    /** At least what another part of the same answer says, where it says anything; what it is when it is less. */
    leastBeside: z.strictObject({ part: z.string(), says: z.string() }).optional(),
    /** What it can be beside each answer of a choice of the same step; what the two mean where they contradict each other. */
    agrees: z
      .strictObject({
        part: z.string(),
        beside: z.record(
          z.string(),
          z.strictObject({ least: z.number().optional(), most: z.number().optional(), over: z.number().optional() }),
        ),
        says: z.string().endsWith('.'),
      })
      .optional(),
    /** Nobody types it: it is worked out and kept beside what was typed. */
    worked: z.boolean().default(false),
    /** Outside it the answer is taken, with this remark. */
    advised: z
      .strictObject({ least: z.number().optional(), most: z.number().optional(), says: z.string().endsWith('.') })
      .optional(),
    /** Outside its range the answer stops the job; what to do now. */
    outsideStops: z.string().endsWith('.').optional(),
    ...loose,
  })
  .transform(({ unit, least, most, under, advised, agrees, ...rest }) => ({
    ...rest,
    unit,
    si: units[unit].si as SiUnit,
    ...given('least', least, (value) => limit(value, unit)),
    ...given('most', most, (value) => limit(value, unit)),
    ...given('under', under, (value) => bound(value, unit)),
    ...given('agrees', agrees, ({ part, beside, says }) => ({
      part,
      says,
      beside: Object.fromEntries(
        Object.entries(beside).map(([answer, ends]) => [
          answer,
          {
            ...given('least', ends.least, (value) => bound(value, unit)),
            ...given('most', ends.most, (value) => bound(value, unit)),
            ...given('over', ends.over, (value) => bound(value, unit)),
          },
        ]),
      ),
    })),
    ...given('advised', advised, ({ says, ...ends }) => ({
      says,
      ...given('least', ends.least, (value) => bound(value, unit)),
      ...given('most', ends.most, (value) => bound(value, unit)),
    })),
  }));

const side = z.strictObject(named);
const pair = z
  .strictObject({
    kind: z.literal('pair'),
    ...named,
    first: side,
    second: side,
    unit: z.enum(Object.keys(units) as [PrintedUnit, ...PrintedUnit[]]),
    /** Per cent that the second may lie below the first, less than this. */
    dropUnder: z.number().positive(),
    ...loose,
  })
  .transform((entry) => ({ ...entry, si: units[entry.unit].si as SiUnit }));

const testerProof = z
  .strictObject({
    kind: z.literal('tester-proof'),
    ...named,
    unit: z.literal('V'),
    least: z.number(),
    most: z.number(),
    ...loose,
  })
  .transform(({ least, most, ...rest }) => ({
    ...rest,
    si: units.V.si,
    least: bound(least, 'V'),
    most: bound(most, 'V'),
  }));

const plain = <Kind extends string>(kind: Kind) => z.strictObject({ kind: z.literal(kind), ...named, ...loose });

const text = z.strictObject({
  kind: z.literal('text'),
  ...named,
  /** It is recorded with a number in it, such as that of a report: words alone are not it. */
  numbered: z.boolean().default(false),
  /** Where a number of the same answer is less than another, these words are wanted. */
  neededBelow: z.strictObject({ part: z.string(), than: z.string() }).optional(),
  ...loose,
});

/** One thing to record at a step. A step without any is closed by a signature alone. */
export const partSchema = z.union([choice, number, pair, testerProof, plain('tick'), plain('photo'), text]);

export type Part = z.output<typeof partSchema>;
export type PartOf<Kind extends Part['kind']> = Extract<Part, { kind: Kind }>;
export type ChoiceOption = PartOf<'choice'>['options'][number];
