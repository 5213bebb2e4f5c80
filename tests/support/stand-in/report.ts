import type { Interaction } from './interactions.ts';
import { seen } from './seen.ts';
import type { World } from './world.ts';

/** What a person needs to read when a test waited in vain. */
export function report(world: World, interaction?: Interaction): string {
  return [
    ...(interaction ? about(interaction) : []),
    ...lately(world),
    ...inChannel(world, interaction?.channelId),
  ].join('\n');
}

function about({ kind, name, user, response, acknowledged, refusals, firedAt }: Interaction): readonly string[] {
  const after = acknowledged.at === undefined ? 'not yet' : `after ${Math.round(acknowledged.at - firedAt)} ms`;
  return [
    `Waiting for the answer to the ${kind} "${name}" of ${user.global_name}.`,
    `First answer: ${response ? `type ${response.type}` : 'none'}, ${after}.`,
    ...refusals.map((refusal) => `Refused: ${refusal}`),
  ];
}

const lately = ({ requests, violations }: World): readonly string[] => [
  `The last of ${requests.length} requests:`,
  ...requests
    .slice(-8)
    .map(({ method, path, status, body }) => `  ${method} ${path} → ${status || 'not answered'} ${shortened(body)}`),
  ...(violations.length > 0 ? ['Bad payloads:', ...violations.slice(-8).map((line) => `  ${line}`)] : []),
];

function inChannel(world: World, channelId: string | undefined): readonly string[] {
  const messages = [...world.messages.values()]
    .filter((message) => !message.deleted && (channelId === undefined || message.channelId === channelId))
    .slice(-5)
    .map(seen);
  return [
    'The last messages there:',
    ...messages.map(({ text, buttons, thinking, ephemeral }) => {
      const marks = [...(thinking ? ['thinking'] : []), ...(ephemeral ? ['ephemeral'] : [])].map((it) => `(${it}) `);
      return `  ${marks.join('')}${shortened(text)} ${buttons.map(({ label }) => `[${label}]`).join(' ')}`;
    }),
  ];
}

function shortened(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? '');
  return text.length > 400 ? `${text.slice(0, 400)}…` : text;
}
