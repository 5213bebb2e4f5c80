import { existsSync, readFileSync } from 'node:fs';
import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';
import type { Operation } from './operations.ts';
import { type Problem, place } from './problem.ts';

/**
 * A copy of the platform's OpenAPI description may lie beside the checkout. It is not part of this project, so a fresh
 * clone is judged without it.
 */
const file = new URL('../../../../shared/discord/openapi.json', import.meta.url);
export const descriptionIsPresent = existsSync(file);

interface Schema {
  readonly $ref?: string;
  readonly type?: unknown;
  readonly enum?: readonly number[];
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly properties?: { readonly type?: Schema };
  readonly additionalProperties?: unknown;
}
interface Description {
  readonly paths: Record<
    string,
    Record<string, { requestBody: { content: { 'application/json': { schema: Schema } } } }>
  >;
  readonly components: { readonly schemas: Record<string, Schema> };
}

const address = 'https://description.local/platform';
let description: { readonly text: Description; readonly ajv: Ajv2020 } | undefined;
const judges = new Map<Operation, ValidateFunction>();

/** What the platform's own description has against the body; nothing where no copy of it is at hand. */
export function descriptionProblems(operation: Operation, body: unknown): readonly Problem[] {
  if (!descriptionIsPresent) return [];
  const judge = judges.get(operation) ?? compiled(operation);
  judges.set(operation, judge);
  return judge(body) ? [] : (judge.errors ?? []).flatMap(asProblem);
}

function compiled({ method, template }: Operation): ValidateFunction {
  description ??= read();
  const operation = description.text.paths[template]?.[method.toLowerCase()];
  if (!operation) throw new Error(`The platform's description has no ${method} ${template}.`);
  const { schema } = operation.requestBody.content['application/json'];
  return description.ajv.compile(strictly(schema, description.text) as Schema);
}

function read() {
  const text = JSON.parse(readFileSync(file, 'utf8')) as Description;
  const ajv = new Ajv2020({ strict: false, allErrors: true, logger: false });
  formats.default(ajv, ['uri', 'date-time', 'int32', 'int64', 'double']);
  ajv.addFormat('snowflake', /^(0|[1-9]\d{0,19})$/);
  ajv.addFormat('nonce', true);
  ajv.addSchema({ $id: address, components: strictly(text.components, text) as Schema });
  return { text, ajv };
}

/** The schema with unknown fields refused, references made absolute, and unions of components picked by their `type`. */
function strictly(part: unknown, text: Description): unknown {
  if (Array.isArray(part)) return part.map((item) => strictly(item, text));
  if (typeof part !== 'object' || part === null) return part;
  const schema = part as Schema;
  const branches = schema.oneOf ?? schema.anyOf;
  const tagged = branches?.map((branch) => ({ branch, types: pinnedTypes(branch, text) }));
  if (tagged?.every(({ types }) => types !== undefined)) {
    return {
      type: 'object',
      required: ['type'],
      properties: { type: { enum: tagged.flatMap(({ types }) => types) } },
      allOf: tagged.map(({ branch, types }) =>
        conditional({ properties: { type: { enum: types } }, required: ['type'] }, strictly(branch, text)),
      ),
    };
  }
  const made = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, absolute(key, value, text)]));
  return schema.type === 'object' && schema.properties && schema.additionalProperties === undefined
    ? { ...made, additionalProperties: false }
    : made;
}

/** Spelt as a list because an object written with the key `then` reads like a promise. */
const conditional = (condition: unknown, consequence: unknown): unknown =>
  Object.fromEntries([
    ['if', condition],
    ['then', consequence],
  ]);

const absolute = (key: string, value: unknown, text: Description): unknown =>
  key === '$ref' ? `${address}${String(value)}` : strictly(value, text);

/** The values of `type` a branch allows, when it is an object that pins them. */
function pinnedTypes(branch: Schema, text: Description): readonly number[] | undefined {
  const name = branch.$ref?.replace('#/components/schemas/', '') ?? '';
  return text.components.schemas[name]?.properties?.type?.enum;
}

function asProblem({ keyword, instancePath, message, params }: ErrorObject): readonly Problem[] {
  if (keyword === 'if') return [];
  const at = place(...instancePath.split('/'));
  if (keyword === 'additionalProperties') {
    const { additionalProperty: field } = params as { readonly additionalProperty: string };
    // The package's schemas are newer than this snapshot and the platform documents the field.
    if (field === 'file_types') return [];
    return [{ at: place(at, field), says: 'no such field in the description', by: 'description', refused: false }];
  }
  return [{ at, says: message ?? keyword, by: 'description', refused: true }];
}
