import { type BaseInteraction, PermissionFlagsBits } from 'discord.js';

type Asked = Pick<BaseInteraction, 'appPermissions'>;

/** Whether files may be put into the channel. */
export const mayAttach = ({ appPermissions }: Asked): boolean => appPermissions.has(PermissionFlagsBits.AttachFiles);

/** Whether the frame that an answer stands in is shown in the channel. */
export const mayEmbed = ({ appPermissions }: Asked): boolean => appPermissions.has(PermissionFlagsBits.EmbedLinks);
