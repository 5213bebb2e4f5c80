import type { APIInteractionResponse, RESTPostAPIChatInputApplicationCommandsJSONBody } from 'discord.js';
import { type Answering, answerLimits } from './answer-limits.ts';
import { withoutClientHabits } from './client-habits.ts';
import { commandEditLimits, commandLimits, everyCommandLimits } from './command-limits.ts';
import { type MessageBody, messageLimits, type SentFile, type Standing } from './message-limits.ts';
import { type Operation, operationOf } from './operations.ts';
import { againstHouseRules, type Problem } from './problem.ts';
import { descriptionProblems } from './published-description.ts';
import { schemaProblems } from './strict-schema.ts';

/** A request as it arrived, with what the receiver knows around it. */
export interface Case {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  readonly files?: readonly SentFile[];
  /** For a first answer: what it answers. */
  readonly answering?: Answering;
  /** For an edit: the message as it stands. */
  readonly standing?: Standing;
  readonly fileLimit?: number;
}

/** Reads the schemas once, so that the first payload of a test is not judged slower than the rest. */
export function warmUp(): void {
  judge({ method: 'POST', path: '/interactions/1/token/callback', body: { type: 6 } });
  judge({ method: 'PATCH', path: '/webhooks/1/token/messages/@original', body: { content: 'x' } });
}

type Command = RESTPostAPIChatInputApplicationCommandsJSONBody;

/** Ten mebibytes, the platform's default for each file. */
const usualFileLimit = 10 * 1024 * 1024;

/**
 * Everything wrong with a payload.
 *
 * Its shape is judged first, by the published schemas and, where a copy is at hand, by the platform's own description.
 * The limits that stand in the documentation only are judged once the shape is right.
 */
export function judge(request: Case): readonly Problem[] {
  const operation = operationOf(request.method, request.path);
  if (!operation) {
    return [againstHouseRules('', `nothing is known of the body of ${request.method} ${request.path}`)];
  }
  const body = withoutClientHabits(operation.meaning, request.body);
  const shape = shapeProblems(operation, body);
  return shape.some(({ refused }) => refused) ? shape : [...shape, ...limits(operation, body, request)];
}

/** Each mistake is told once: the description speaks where the schemas found nothing. */
function shapeProblems(operation: Operation, body: unknown): readonly Problem[] {
  const found = schemaProblems(operation.schema, body);
  if (found.some(({ refused }) => refused)) return found;
  const places = new Set(found.map(({ at }) => at));
  return [...found, ...descriptionProblems(operation, body).filter(({ at }) => !places.has(at))];
}

function limits(operation: Operation, body: unknown, request: Case): readonly Problem[] {
  const { files = [], fileLimit = usualFileLimit, answering, standing } = request;
  const surroundings = { files, fileLimit, ...(standing ? { standing } : {}) };
  switch (operation.meaning) {
    case 'first-answer':
      return answerLimits(body as APIInteractionResponse, surroundings, answering);
    case 'new-message':
      return messageLimits({ ...surroundings, at: '', body: body as MessageBody, editing: false });
    case 'message-edit':
      return messageLimits({ ...surroundings, at: '', body: body as MessageBody, editing: true });
    case 'every-command':
      return everyCommandLimits(body as readonly Command[]);
    case 'one-command':
      return commandLimits('', body as Command);
    case 'command-edit':
      return commandEditLimits(body as Partial<Command>);
    case 'thread':
      return [];
  }
}
