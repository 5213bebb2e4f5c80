import type { Action, DeskCommand } from '#chat/command.ts';
import { demoHouse } from '#knowledge/demo-house.ts';
import { putAway } from './workings/demo-house.ts';
import { stopReply } from './workings/demo-stop.ts';
import { saying } from './workings/plain-replies.ts';

const { stops } = demoHouse;

const walk: Action = {
  name: '',
  summary: 'Walk through a whole job in an invented house: complaint, survey, fan, swap, callback.',
  options: [
    {
      id: 'stop',
      brief: 'where to look in, or end to put the house away; from the start when left out',
      choices: [
        ...stops.map(({ title }, index) => ({ id: String(index + 1), label: `${index + 1} ${title}` })),
        { id: 'end', label: 'end: put the demo house away' },
      ],
    },
  ],
  act(desk, { stop: said = '1' }) {
    if (said.toLowerCase() === 'end') {
      const gone = putAway(desk);
      return saying(
        gone.length === 0
          ? 'There is no demo house here. /demo makes one.'
          : `The demo house is put away: job ${gone.join(', ')} is erased. /demo makes it anew.`,
      );
    }
    const stop = stops[Number(said) - 1];
    return stop
      ? stopReply(desk, stop)
      : saying(`The demo has stops 1 to ${stops.length}. Give one of them, or end.`, { refused: true });
  },
};

const demo: DeskCommand = {
  kind: 'desk',
  name: 'demo',
  summary: walk.summary,
  example: '',
  actions: [walk],
};

export default demo;
