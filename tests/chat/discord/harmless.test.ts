import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipped, harmless, speakerName, visible } from '#chat/discord/harmless.ts';
import { stage } from './stage.ts';

describe('text somebody typed', () => {
  it.each([
    ['**bold** _italic_ ~~gone~~ ||hidden||', '\\*\\*bold\\*\\* \\_italic\\_ \\~\\~gone\\~\\~ \\|\\|hidden\\|\\|'],
    ['```ansi\nred```', '\\`\\`\\`ansi\nred\\`\\`\\`'],
    [
      '# heading\n-# small\n> quote\n>>> quotes\n- item\n1. item',
      '\\# heading\n\\-# small\n\\> quote\n\\>>> quotes\n\\- item\n1\\. item',
    ],
    ['[click me](https://example.com)', '\\[click me\\](https\\://example.com)'],
    ['see discord.gg/abc', 'see discord\\.gg/abc'],
    ['a \\ b', 'a \\\\ b'],
    ['\u001b[31mred\u001b[0m\u0000\u009b1m', 'red'],
    ['left\u202eright', 'leftright'],
  ])('%j shows as it was typed', (typed, told) => {
    expect(harmless(typed)).toBe(told);
  });

  it.each([
    '@everyone',
    '@here',
    '<@123456789012345678>',
    '<@!123456789012345678>',
    '<@&1>',
    '<#1>',
    '</duct:1>',
    '<:a:1>',
    '<a:b:1>',
    '<t:0:R>',
    '<https://example.com>',
  ])('%s is no mention, command, emoji, time or link', (typed) => {
    expect(harmless(typed)).not.toContain(typed);
    expect(harmless(typed).replaceAll(/[\u200b\\]/g, '')).toBe(typed);
  });

  it.each([
    '0.145 in. w.g.',
    '8\'6"',
    '14 ft 4 in flex; 2 x elbow 90 (k=0.35)',
    '1/4 in',
    '+16 cfm',
    '-5',
    '72 %',
    '5 > 4',
    'fan 96@0 84@0.1',
  ])('%s is left alone', (typed) => {
    expect(harmless(typed)).toBe(typed);
  });

  it('whatever it is, it keeps its words and holds nothing the platform would act on', () => {
    const nasty = fc.constantFrom(
      '@everyone',
      '<@1>',
      '**',
      '`',
      '[a](b)',
      '\n# ',
      '\n> ',
      'https://',
      '\u001b[1m',
      '\u0000',
      '||',
      'x',
      ' ',
    );
    const text = fc
      .array(fc.oneof(nasty, fc.string({ unit: 'grapheme' })), { maxLength: 12 })
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, (typed) => {
        const told = harmless(typed);
        expect(told).not.toMatch(/@(everyone|here)|<[@#:/\w]|https?:\/\/|(?<!\\)(\\\\)*[*_~|`[\]]/i);
        expect(told).not.toMatch(/^\s*(#|>|-#)/m);
        expect(told.replace(/[^\P{Cc}\n]/gu, '')).toBe(told);
        expect(told.replaceAll(/\\([^0-9A-Za-z\s])|\u200b/g, '$1')).toBe(visible(typed).replaceAll('\u200b', ''));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('is clipped between letters, never within one', () => {
    expect(clipped('🛁🛁🛁', 4)).toBe('🛁…');
    expect(clipped('abc', 3)).toBe('abc');
    expect(clipped('abcd', 3)).toBe('ab…');
  });
});

it('only a whole mention in the records is shown as a name', () => {
  expect(speakerName('<@123456789012345678>')).toBe('<@123456789012345678>');
  expect(speakerName('<@123456789012345678> @everyone')).not.toContain('<@1');
  expect(speakerName('<@&123456789012345678>')).not.toContain('<@&');
});

describe('names and answers', () => {
  const play = stage();
  const nasty = '**x** `y` ||z|| @everyone <@123456789012345678> [a](https://example.com) \u001b[31mred\u0000';

  it('mention nobody and break out of nothing, wherever they are shown', async () => {
    const { ann, channel } = play.crew();
    const opened = await ann.slash('job open', { name: nasty });
    const asked = await ann.slash('size', { 'room-length': nasty });
    const reply = await ann.slash('size', {
      'room-length': '8 ft',
      'room-width': '5 ft',
      'ceiling-height': '8 ft',
      fixtures: 'none',
      running: 'on-demand',
    });
    const shown = await ann.slash('job show', { name: nasty });
    const listed = await ann.slash('job list');
    const wrong = await ann.slash('job show', { name: `${nasty} 2` });
    const helped = await ann.slash('help', { command: nasty });
    expect(asked.content).toContain('\\*\\*x\\*\\* \\`y\\`');
    expect(listed.text).toContain('\\*\\*x\\*\\* \\`y\\`');
    expect(reply.embeds.at(-1)?.footer?.text).toContain('Job 1, **x** `y`');
    for (const { content, embeds } of [opened, asked, reply, shown, listed, wrong, helped]) {
      const formatted = [content, ...embeds.flatMap(({ title, description }) => [title ?? '', description ?? ''])];
      for (const text of formatted) {
        expect(text).not.toMatch(/@everyone|<@123|https:|[^\P{Cc}\n]|(?<!\\)\|/u);
      }
    }
    // What was sent says besides, every time, that it mentions nobody.
    const sent = play.standIn.requests.filter(({ path }) => path.includes('/callback'));
    expect(sent.length).toBeGreaterThan(5);
    for (const { body } of sent) {
      const { data } = body as { data?: { allowed_mentions?: unknown } };
      expect(data?.allowed_mentions).toMatchObject({ parse: [] });
    }
    expect(play.standIn.messages(channel)).toHaveLength(7);
  });
});
