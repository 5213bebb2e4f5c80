import {
  type BadCase,
  button,
  chart,
  choices,
  edit,
  type GoodCase,
  layout,
  menu,
  quiet,
  reply,
  row,
  text,
  times,
} from './builders.ts';

export const goodMessages: readonly GoodCase[] = [
  [
    'a plain answer to a press on a message laid out by components',
    reply({ content: 'Done' }, { standing: { flags: layout, files: [], shows: {} } }),
  ],
  ['a short answer', reply({ content: 'Needs 80 cfm' })],
  ['content of exactly 2,000 characters', reply({ content: 'x'.repeat(2000) })],
  ['five rows of five buttons', reply({ components: times(5, (r) => row(...times(5, (c) => button(`${r}-${c}`)))) })],
  ['a menu of 25 choices', reply({ content: 'Which', components: [row(menu({ options: choices(25) }))] })],
  [
    'a link and a button side by side',
    reply({ components: [row(button(), { type: 2, style: 5, label: 'Read', url: 'https://example.org' })] }),
  ],
  [
    'an embed with a chart sent beside it',
    reply(
      {
        embeds: [{ title: 'Duct', image: { url: 'attachment://chart.png' } }],
        attachments: [{ id: '0', description: 'Two curves' }],
      },
      { files: [chart] },
    ),
  ],
  [
    'embeds of 6,000 characters together',
    reply({ embeds: [{ description: 'x'.repeat(4000) }, { description: 'y'.repeat(2000) }] }),
  ],
  [
    'a message of components with a gallery',
    reply(
      {
        flags: layout,
        components: [
          { type: 17, components: [text('Duct'), { type: 12, items: [{ media: { url: 'attachment://chart.png' } }] }] },
        ],
      },
      { files: [chart] },
    ),
  ],
  [
    'a section with a button beside it',
    reply({ flags: layout, components: [{ type: 9, components: [text('Next step')], accessory: button() }] }),
  ],
  ['an edit that only takes the buttons away', edit({ components: [] })],
  [
    'an edit that shows a file sent earlier',
    edit(
      { embeds: [{ image: { url: 'attachment://chart.png' } }] },
      { standing: { flags: 0, files: ['chart.png'], shows: {} } },
    ),
  ],
  [
    'an edit of a message already laid out by components',
    edit({ components: [text('Done')] }, { standing: { flags: layout, files: [], shows: {} } }),
  ],
  ['an edit that keeps an old file', edit({ content: 'Kept', attachments: [{ id: '1300000000000000001' }] })],
  [
    'a follow-up',
    {
      method: 'POST',
      path: '/api/v10/webhooks/1/token?wait=true',
      body: { content: 'And', ...quiet, tts: false, enforce_nonce: false },
    },
  ],
  [
    'a message in a channel',
    { method: 'POST', path: '/channels/1/messages', body: { content: 'And', ...quiet, tts: false } },
  ],
  [
    'a new thread',
    {
      method: 'POST',
      path: '/channels/1/threads',
      body: { name: '12 Elm Street', type: 11, auto_archive_duration: 10080 },
    },
  ],
];

/** Each breaks exactly one limit of the platform's published documentation or description, or a rule of this project. */
export const badMessages: readonly BadCase[] = [
  [
    'an edit into a layout that leaves the old words',
    edit(
      { flags: layout, components: [text('Done')] },
      { standing: { flags: 0, files: [], shows: { content: 'Working on it' } } },
    ),
    { at: 'content', by: 'limit' },
  ],
  [
    'an edit that takes away the only words',
    edit({ content: '' }, { standing: { flags: 0, files: [], shows: { content: 'Needs 80 cfm' } } }),
    { at: '', by: 'limit' },
  ],
  ['content of 2,001 characters', reply({ content: 'x'.repeat(2001) }), { at: 'data.content', by: 'schema' }],
  [
    'a channel message of 2,001 characters',
    { method: 'POST', path: '/channels/1/messages', body: { content: 'x'.repeat(2001), ...quiet } },
    { at: 'content', by: 'limit' },
  ],
  ['a misspelt field', reply({ content: 'x', contnet: 'y' }), { at: 'data.contnet', by: 'schema', refused: false }],
  [
    'a misspelt field deep inside',
    reply({ content: 'x', components: [row(button(0, { lable: 'y' }))] }),
    { at: 'data.components.0.components.0.lable', by: 'schema', refused: false },
  ],
  ['an empty message', reply({ content: ' \n' }), { at: 'data', by: 'limit' }],
  [
    'an edit that leaves nothing',
    edit({ content: '', embeds: [], components: [], attachments: [] }),
    { at: '', by: 'limit' },
  ],
  ['6 rows', reply({ components: times(6, (nth) => row(button(nth))) }), { at: 'data.components', by: 'limit' }],
  [
    '6 buttons in a row',
    reply({ components: [row(...times(6, (nth) => button(nth)))] }),
    { at: 'data.components.0.components', by: 'schema' },
  ],
  ['an empty row', reply({ content: 'x', components: [row()] }), { at: 'data.components.0.components', by: 'schema' }],
  [
    'a menu and a button in one row',
    reply({ components: [row(menu(), button())] }),
    { at: 'data.components.0', by: 'limit' },
  ],
  [
    '26 choices',
    reply({ components: [row(menu({ options: choices(26) }))] }),
    { at: 'data.components.0.components.0.options', by: 'schema' },
  ],
  [
    'no choices',
    reply({ components: [row(menu({ options: [] }))] }),
    { at: 'data.components.0.components.0.options', by: 'schema' },
  ],
  [
    'two choices of one value',
    reply({ components: [row(menu({ options: [...choices(2), ...choices(1)] }))] }),
    { at: 'data.components.0.components.0.options', by: 'limit' },
  ],
  [
    'more choices needed than allowed',
    reply({ components: [row(menu({ min_values: 2, max_values: 1 }))] }),
    { at: 'data.components.0.components.0.min_values', by: 'limit' },
  ],
  [
    'more choices allowed than there are',
    reply({ components: [row(menu({ max_values: 4 }))] }),
    { at: 'data.components.0.components.0.max_values', by: 'limit' },
  ],
  [
    'an id of 101 characters',
    reply({ components: [row(button(0, { custom_id: 'x'.repeat(101) }))] }),
    { at: 'data.components.0.components.0.custom_id', by: 'schema' },
  ],
  [
    'the same id twice',
    reply({ components: [row(button(), button())] }),
    { at: 'data.components.0.components.1.custom_id', by: 'limit' },
  ],
  [
    'a label of 81 characters',
    reply({ components: [row(button(0, { label: 'x'.repeat(81) }))] }),
    { at: 'data.components.0.components.0.label', by: 'schema' },
  ],
  [
    'a button with nothing on it',
    reply({ components: [row(button(0, { label: '' }))] }),
    { at: 'data.components.0.components.0', by: 'limit' },
  ],
  [
    'a button without an id',
    reply({ components: [row({ type: 2, style: 1, label: 'Next' })] }),
    { at: 'data.components.0.components.0.custom_id', by: 'limit' },
  ],
  [
    'a link with an id',
    reply({ components: [row(button(0, { style: 5, url: 'https://example.org' }))] }),
    { at: 'data.components.0.components.0.custom_id', by: 'limit' },
  ],
  [
    'an unknown component',
    reply({ components: [row({ type: 99 })] }),
    { at: 'data.components.0.components.0.type', by: 'schema' },
  ],
  ['11 embeds', reply({ embeds: times(11, () => ({ title: 'x' })) }), { at: 'data.embeds', by: 'schema' }],
  [
    'an embed description of 4,097 characters',
    reply({ embeds: [{ description: 'x'.repeat(4097) }] }),
    { at: 'data.embeds.0.description', by: 'schema' },
  ],
  [
    'embeds of 6,001 characters together',
    reply({ embeds: [{ description: 'x'.repeat(4000) }, { description: 'y'.repeat(2001) }] }),
    { at: 'data.embeds', by: 'limit' },
  ],
  [
    '26 embed fields',
    reply({ embeds: [{ fields: times(26, () => ({ name: 'a', value: 'b' })) }] }),
    { at: 'data.embeds.0.fields', by: 'schema' },
  ],
  [
    'a field value of 1,025 characters',
    reply({ embeds: [{ fields: [{ name: 'a', value: 'x'.repeat(1025) }] }] }),
    { at: 'data.embeds.0.fields.0.value', by: 'schema' },
  ],
  [
    'an empty field name',
    reply({ embeds: [{ fields: [{ name: '', value: 'b' }] }] }),
    { at: 'data.embeds.0.fields.0.name', by: 'limit' },
  ],
  [
    'an embed with nothing in it',
    reply({ content: 'x', embeds: [{ color: 1 }] }),
    { at: 'data.embeds.0', by: 'limit' },
  ],
  ['a text display without the flag', reply({ components: [text('x')] }), { at: 'data.components.0', by: 'limit' }],
  [
    'content beside a layout',
    reply({ flags: layout, content: 'x', components: [text('y')] }),
    { at: 'data.content', by: 'limit' },
  ],
  [
    '41 components with nested ones',
    reply({ flags: layout, components: times(2, () => ({ type: 17, components: times(20, () => text('x')) })) }),
    { at: 'data.components', by: 'limit' },
  ],
  [
    'a text display of 4,001 characters',
    reply({ flags: layout, components: [text('x'.repeat(4001))] }),
    { at: 'data.components.0.content', by: 'schema' },
  ],
  [
    'text displays of 4,001 characters together',
    reply({ flags: layout, components: [text('x'.repeat(4000)), text('y')] }),
    { at: 'data.components', by: 'limit' },
  ],
  [
    'a file no component shows',
    reply({ flags: layout, components: [text('x')] }, { files: [chart] }),
    { at: 'files[0]', by: 'limit', refused: false },
  ],
  [
    'a picture that was not sent',
    reply({ embeds: [{ title: 'x', image: { url: 'attachment://chart.png' } }] }),
    { at: 'data.embeds.0.image.url', by: 'limit' },
  ],
  [
    'a file name the platform would change',
    reply(
      { embeds: [{ title: 'x', image: { url: 'attachment://chart(1).png' } }] },
      { files: [{ ...chart, name: 'chart(1).png' }] },
    ),
    { at: 'data.embeds.0.image.url', by: 'limit' },
  ],
  [
    'alt text for a file that was not sent',
    reply({ content: 'x', attachments: [{ id: '1', description: 'y' }] }, { files: [chart] }),
    { at: 'data.attachments.0.id', by: 'limit' },
  ],
  [
    'a file over ten mebibytes',
    reply({ content: 'x' }, { files: [{ ...chart, size: 10 * 1024 * 1024 + 1 }] }),
    { at: 'files[0]', by: 'limit' },
  ],
  [
    '11 files',
    reply({ content: 'x' }, { files: times(11, (nth) => ({ ...chart, field: `files[${nth}]` })) }),
    { at: '', by: 'limit' },
  ],
  [
    'an answer that could ping people',
    reply({ content: 'x', allowed_mentions: undefined }),
    { at: 'data.allowed_mentions', by: 'house', refused: false },
  ],
  [
    'an answer that pings users',
    reply({ content: 'x', allowed_mentions: { parse: ['users'] } }),
    { at: 'data.allowed_mentions', by: 'house', refused: false },
  ],
  [
    'mentions of an unknown kind',
    reply({ content: 'x', allowed_mentions: { parse: ['all'] } }),
    { at: 'data.allowed_mentions.parse.0', by: 'schema' },
  ],
  [
    'a request nobody knows',
    { method: 'POST', path: '/guilds/1/bans', body: {} },
    { at: '', by: 'house', refused: false },
  ],
];
