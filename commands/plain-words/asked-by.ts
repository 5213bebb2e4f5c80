import type { AnyQuestion } from '#interview/question.ts';
import boxfill from '../boxfill.ts';
import callback from '../callback.ts';
import cost from '../cost.ts';
import duct from '../duct.ts';
import makeup from '../makeup.ts';
import measure from '../measure.ts';
import parts from '../parts.ts';
import plan from '../plan.ts';
import power from '../power.ts';
import reach from '../reach.ts';
import runtime from '../runtime.ts';
import size from '../size.ts';
import sweat from '../sweat.ts';

/** The commands a line of plain words can be read as. */
const commands = [size, duct, reach, runtime, sweat, makeup, boxfill, measure, cost, power, callback, parts, plan];

/** The ids of the questions each command takes. */
export const askedBy: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  commands.map(({ name, takes }) => [name, new Set(takes.map(({ id }) => id))]),
);

/** Every question of theirs by its id. */
export const questionsById: ReadonlyMap<string, AnyQuestion> = new Map(
  commands.flatMap(({ takes }) => takes as readonly AnyQuestion[]).map((question) => [question.id, question]),
);
