import type { z } from 'zod';

/** A knowledge file breaks its own rules. Stops start-up: a wrong figure must never be served. */
export class BadKnowledge extends Error {
  override readonly name = 'BadKnowledge';
  readonly file: string;

  constructor(file: string, problems: readonly string[]) {
    super(problems.map((problem) => `${file} › ${problem}`).join('\n'));
    this.file = file;
  }
}

/**
 * The contents of one knowledge file, checked against its schema and frozen.
 *
 * @throws BadKnowledge naming the file, the entry and what would be right.
 */
export function checked<Schema extends z.ZodType>(file: string, schema: Schema, contents: unknown): z.output<Schema> {
  const result = schema.safeParse(contents);
  if (!result.success) {
    throw new BadKnowledge(
      file,
      result.error.issues.map((issue) => `${issue.path.join(' › ')}: ${issue.message}`),
    );
  }
  return deepFrozen(result.data);
}

function deepFrozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFrozen);
  }
  return value;
}
