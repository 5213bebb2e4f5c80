import type { Command } from '#chat/command.ts';
import duct from './duct.ts';
import help from './help.ts';
import job from './job.ts';
import size from './size.ts';

/** Every command, in the order a job happens. A new one is added here by hand. */
export const commands: readonly Command[] = [size, duct, job, help];
