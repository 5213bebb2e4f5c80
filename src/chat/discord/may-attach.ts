import { type BaseInteraction, PermissionFlagsBits } from 'discord.js';

/** Whether files may be put into the channel. */
export const mayAttach = ({ appPermissions }: Pick<BaseInteraction, 'appPermissions'>): boolean =>
  appPermissions.has(PermissionFlagsBits.AttachFiles);
