import { DiscordAPIError } from 'discord.js';

/** The platform's numbers for a message that was deleted, and for one in a thread that was archived. */
const gone: readonly unknown[] = [10_008, 50_083];

/** Whether a message could not be changed because it is not there any more, or not to be changed. */
export const isOutOfReach = (error: unknown): boolean => error instanceof DiscordAPIError && gone.includes(error.code);
