import { discriminatedUnion, lazy, never } from 'zod/mini';
import * as z from 'zod/v4/core';
import { type Problem, place } from './problem.ts';

type Branches = readonly [z.$ZodTypeDiscriminable, ...z.$ZodTypeDiscriminable[]];

const strictOnes = new Map<z.$ZodType, z.$ZodType>();

/**
 * The same schema, refusing fields it does not know, and naming the one branch of a union that was meant.
 *
 * The package's own switch for strict objects comes too late: its schemas are built while it loads. And its unions
 * try every branch, which buries one wrong field under the complaints of ten other kinds of component.
 */
export function strict(schema: z.$ZodType): z.$ZodType {
  const known = strictOnes.get(schema);
  if (known) return known;
  const made = rebuilt(schema as z.$ZodTypes);
  strictOnes.set(schema, made);
  return made;
}

function rebuilt(schema: z.$ZodTypes): z.$ZodType {
  const { def } = schema._zod;
  switch (def.type) {
    case 'object': {
      const shape = Object.fromEntries(Object.entries(def.shape).map(([key, value]) => [key, strict(value)]));
      return copy(schema, { ...def, shape, catchall: never() });
    }
    case 'array':
      return copy(schema, { ...def, element: strict(def.element) });
    case 'optional':
    case 'nullable':
      return copy(schema, { ...def, innerType: strict(def.innerType) });
    case 'lazy':
      // Not a copy: the definition of one that has been used remembers what it found.
      return lazy(() => strict(def.getter()) as z.SomeType);
    case 'union':
      return def.options.every(namesItsType)
        ? discriminatedUnion('type', def.options.map(strict) as unknown as Branches)
        : copy(schema, { ...def, options: def.options.map(strict) });
    default:
      return schema;
  }
}

const copy = <Def extends z.$ZodTypeDef>(schema: z.$ZodType, def: Def): z.$ZodType => z.clone(schema, def);

const namesItsType = (schema: z.$ZodType): boolean => 'type' in (schema._zod.propValues ?? {});

const english = z.locales.en().localeError;

/** What the schema has against the body. */
export function schemaProblems(schema: z.$ZodType, body: unknown): readonly Problem[] {
  const result = z.safeParse(strict(schema), body, { error: english });
  return result.success ? [] : result.error.issues.flatMap((issue) => issueProblems('', issue));
}

function issueProblems(prefix: string, issue: z.$ZodIssue): readonly Problem[] {
  const at = place(prefix, ...issue.path.map(String));
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      at: place(at, key),
      says: 'no such field; the platform drops it without a word',
      by: 'schema',
      refused: false,
    }));
  }
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    return nearestBranch(issue.errors).flatMap((inner) => issueProblems(at, inner));
  }
  return [{ at, says: issue.message, by: 'schema', refused: true }];
}

/** The branch that was probably meant: one of the right kind if there is one, with the fewest complaints. */
function nearestBranch(branches: readonly (readonly z.$ZodIssue[])[]): readonly z.$ZodIssue[] {
  const distance = (issues: readonly z.$ZodIssue[]) =>
    issues.length +
    (issues.some(({ path, code }) => path.length === 0 && code !== 'unrecognized_keys')
      ? Number.MAX_SAFE_INTEGER / 2
      : 0);
  return branches.reduce((best, branch) => (distance(branch) < distance(best) ? branch : best));
}
