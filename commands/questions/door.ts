import { estimated } from '#interview/quantities.ts';
import { doorWidth as doorWidthKind, smallLength } from '#quantity/kinds.ts';

export const doorWidth = estimated({
  id: 'door-width',
  prompt: 'How wide is the bathroom door?',
  why: 'The air the fan throws out comes in under the door; its width and gap are the only way in.',
  brief: 'Bathroom door width',
  kind: doorWidthKind,
  whenUnknown: {
    value: {
      low: doorWidthKind.from(24, 'in'),
      typical: doorWidthKind.from(30, 'in'),
      high: doorWidthKind.from(32, 'in'),
    },
    because: 'Bathroom doors are mostly 24 to 32 in wide; from common practice.',
  },
});

export const doorGap = estimated({
  id: 'door-gap',
  prompt: 'How high is the gap under the shut door, from the floor or the top of the carpet?',
  why: 'A tight door starves the strongest fan: the gap takes pressure just as the duct does.',
  brief: 'Gap under the shut door',
  kind: smallLength,
  whenUnknown: {
    value: { low: smallLength.from(0.25, 'in'), typical: smallLength.from(0.5, 'in'), high: smallLength.from(1, 'in') },
    because: 'Gaps of 1/4 to 1 in are common; from common practice.',
  },
});
