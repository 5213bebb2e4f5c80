import type { Meaning } from './operations.ts';

interface Fields {
  readonly data?: unknown;
  readonly nsfw?: unknown;
  readonly default_member_permissions?: unknown;
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * The body without what the chat library puts into every one by itself, which the platform takes and its
 * description does not mention: `enforce_nonce: false`, `tts: false`, `nsfw` on commands, and permissions as
 * decimal digits where the description has a number. Measured with discord.js 14.28.1; anything else is the bot's own.
 */
export function withoutClientHabits(meaning: Meaning, body: unknown): unknown {
  switch (meaning) {
    case 'every-command':
      return Array.isArray(body) ? body.map(plainCommand) : body;
    case 'one-command':
    case 'command-edit':
      return plainCommand(body);
    case 'first-answer':
      return isFields(body) && isFields(body.data) ? { ...body, data: plainMessage(body.data) } : body;
    case 'new-message':
    case 'message-edit':
      return isFields(body) ? plainMessage(body) : body;
    case 'thread':
      return body;
  }
}

const plainMessage = (message: Fields): Fields =>
  Object.fromEntries(
    Object.entries(message).filter(([key, value]) => !((key === 'tts' || key === 'enforce_nonce') && value === false)),
  );

function plainCommand(command: unknown): unknown {
  if (!isFields(command)) return command;
  const { nsfw, default_member_permissions: permissions, ...rest } = command;
  return {
    ...rest,
    ...(nsfw === undefined || typeof nsfw === 'boolean' ? {} : { nsfw }),
    ...(permissions === undefined ? {} : { default_member_permissions: asNumber(permissions) }),
  };
}

const asNumber = (value: unknown): unknown =>
  typeof value === 'string' && /^\d{1,20}$/.test(value) ? Number(value) : value;
