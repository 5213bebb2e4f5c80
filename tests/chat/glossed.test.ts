import { describe, expect, it } from 'vitest';
import { plainReply, replyText } from '#chat/discord/text.ts';
import { glossed } from '#chat/glossed.ts';
import { oneShot } from '#chat/one-shot.ts';
import { wordsOf } from '#chat/options.ts';
import { replyText as inTerminal } from '#chat/terminal/render.ts';
import { commands } from '#commands/index.ts';
import type { Reply } from '#findings/reply.ts';
import { glosses } from '#knowledge/glosses.ts';

const saying = (says: string, more: Partial<Reply> = {}): Reply => ({
  headline: 'An answer.',
  findings: [{ id: 'f', weight: 'advice', says, working: [], sources: [] }],
  ...more,
});

describe('a term of the trade is glossed where it is met', () => {
  it('in the order met, two at most, and the everyday ones only beside a rarer one', () => {
    expect(glossed(saying('80 cfm at the collar, past the damper, with mastic.')).words).toBe(
      'collar, the round stub on the fan that the duct slips over; damper, a flap that lets air out and falls shut',
    );
    expect(glossed(saying('80 cfm at the collar.')).words).toMatch(/^collar, .*; cfm, cubic feet of air a minute$/);
    expect(glossed(saying('80 cfm at 0.1 in. w.g.')).words).toBeUndefined();
    expect(glossed(saying('The fan hums.')).words).toBeUndefined();
  });

  it('as a whole word, and in the language of the answer', () => {
    expect(glossed(saying('A collarbone; cfm50 is not told.')).words).toMatch(/^cfm50, /);
    expect(glossed(saying('La compuerta no abre.', { language: 'spanish' })).words).toBe(
      'compuerta, tapa que deja salir el aire y se cierra sola',
    );
  });

  it('under no refusal and no bare word', () => {
    expect(glossed(saying('The damper.', { refused: true })).words).toBeUndefined();
    expect(glossed({ headline: 'The damper.', findings: [] }).words).toBeUndefined();
  });

  it('the same in a terminal, in a message and in a file', () => {
    const duct = commands.find(({ name }) => name === 'duct');
    if (duct?.kind !== 'answer') throw new Error('there is no duct');
    const { reply } = oneShot(duct, wordsOf(duct.example), { units: 'inch-pound' });
    if (!reply) throw new Error('duct does not answer its example');
    const line = `Words: ${reply.words}.`;
    expect(reply.words).toContain('static pressure, how hard air pushes on the walls of the duct');
    expect(inTerminal(reply, { width: 400, colour: false })).toContain(line);
    expect(replyText(reply).blocks.at(-1)).toContain(`-# ${line}`);
    expect(plainReply(reply)).toContain(line);
  });

  it('and gives way where a message is full', () => {
    const of = (lines: number) =>
      glossed(saying('The damper.', { assumed: Array.from({ length: lines }, () => 'x'.repeat(60)) }));
    // The most lines that a message holds whole; then there is no room for a gloss any more.
    const most = Array.from({ length: 100 }, (_, lines) => lines).findLast((lines) => replyText(of(lines)).whole) ?? 0;
    expect(most).toBeGreaterThan(20);
    expect(replyText(of(most)).blocks.join('\n')).not.toContain('Words:');
    expect(replyText(of(10)).blocks.join('\n')).toContain('Words: damper');
  });

  it('each gloss is short, ends without a full stop, and explains by no other name of itself', () => {
    for (const list of Object.values(glosses))
      for (const { seen, says, id } of list) {
        expect(says, id).not.toMatch(/[.!]$/);
        for (const form of seen) expect(says.toLowerCase(), id).not.toContain(` ${form.toLowerCase()} `);
      }
  });
});
