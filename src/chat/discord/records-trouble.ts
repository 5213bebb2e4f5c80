import type { StoreTrouble, StoreTroubleCode } from '#store/trouble.ts';

const operator = 'tell whoever runs this bot';

/** What a person in the crew is told; the log tells whoever runs the program more. */
const sentences: Partial<Record<StoreTroubleCode, string>> = {
  full: `The disk is full, so that was not kept. Write it down, ${operator}, and try again once there is room.`,
  'read-only': `The records cannot be written just now, so that was not kept. Write it down and ${operator}.`,
  corrupt: `The records are damaged, so that was not kept. Write it down and ${operator}: a backup must be restored.`,
  locked: 'The records are busy just now, so that was not kept. Try it again in a moment.',
};

/** Why the records did not take what a person said, without a path of the machine. */
export const recordsTroubleText = ({ code }: StoreTrouble): string =>
  `${sentences[code] ?? `The disk failed, so that was not kept. Write it down and ${operator}.`} What was kept before is not touched.`;
