import type { Problem } from '../payload-judge/problem.ts';

/** What the stand-in answers to a request. */
export interface Answer {
  readonly status: number;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

export const nothing: Answer = { status: 204 };
export const found = (body: unknown): Answer => ({ status: 200, body });

const refusal = (status: number, code: number, message: string): Answer => ({ status, body: { message, code } });

// The numbers are those of the platform's published table of error codes; the words are its own.
export const unauthorized = refusal(401, 0, '401: Unauthorized');
export const noSuchRoute = refusal(404, 0, '404: Not Found');
export const unknownChannel = refusal(404, 10_003, 'Unknown Channel');
export const unknownGuild = refusal(404, 10_004, 'Unknown Guild');
export const unknownMember = refusal(404, 10_007, 'Unknown Member');
export const unknownMessage = refusal(404, 10_008, 'Unknown Message');
export const unknownUser = refusal(404, 10_013, 'Unknown User');
export const unknownWebhook = refusal(404, 10_015, 'Unknown Webhook');
export const unknownInteraction = refusal(404, 10_062, 'Unknown interaction');
export const unknownCommand = refusal(404, 10_063, 'Unknown application command');
export const alreadyAcknowledged = refusal(400, 40_060, 'Interaction has already been acknowledged.');
export const missingAccess = refusal(403, 50_001, 'Missing Access');
export const notYourMessage = refusal(403, 50_005, 'Cannot edit a message authored by another user');
export const missingPermissions = refusal(403, 50_013, 'Missing Permissions');
export const invalidToken = refusal(401, 50_027, 'Invalid Webhook Token');
export const archivedThread = refusal(400, 50_083, 'Thread is archived');

const tooLarge = 40_005;
const invalidForm = 50_035;

/** A payload the judge found wanting, as the platform would say it: errors nested by the path that leads to them. */
export function badPayload(problems: readonly Problem[]): Answer {
  const ownCode = problems.find(({ code }) => code !== undefined);
  if (ownCode?.code !== undefined) return refusal(ownCode.code === tooLarge ? 413 : 400, ownCode.code, ownCode.says);
  return { status: 400, body: { message: 'Invalid Form Body', code: invalidForm, errors: nested(problems) } };
}

interface Errors {
  [key: string]: Errors | { readonly code: string; readonly message: string }[];
}

function nested(problems: readonly Problem[]): Errors {
  const errors: Errors = {};
  for (const { at, says, by } of problems) {
    let place = errors;
    for (const key of at.split('.').filter(Boolean)) {
      const next = place[key];
      place = place[key] = next && !Array.isArray(next) ? next : {};
    }
    const here = place['_errors'];
    place['_errors'] = [...(Array.isArray(here) ? here : []), { code: by.toUpperCase(), message: says }];
  }
  return errors;
}
