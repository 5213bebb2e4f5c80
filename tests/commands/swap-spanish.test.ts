import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import crew from '#commands/crew.ts';
import swap from '#commands/swap.ts';
import { checklistsIn } from '#knowledge/checklist-spanish.ts';
import { checklists } from '#knowledge/checklists.ts';
import { openStore } from '#store/store.ts';

/** Words that no Spanish sentence holds and hardly an English one lacks. */
const englishWords = /\b(?:the|is|are|and|of|with|not|it|this|that|waits|first)\b/i;

/** What somebody answered in Spanish at one terminal is told. */
function session() {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  const talk = terminalSession({
    store: store.scoped('prueba'),
    commands: [swap, crew],
    who: 'van',
    paper: { width: 96, colour: false },
    drawn: async () => undefined,
    language: 'spanish',
  });
  return (line: string): Promise<string> => talk.say(line);
}

describe('a list in Spanish', () => {
  it('is walked at a terminal without an English sentence', async () => {
    const say = session();
    await say('crew add Ana as=lead');
    await say('crew add Beto as=apprentice');
    const started = await say('swap start list=control-only --as Ana');
    expect(started).toContain('Solo control nuevo, trabajo 1:');
    expect(started).toContain('cuentan como la respuesta peligrosa');
    const mayNot = await say('swap sign step=S11 --as Beto');
    expect(mayNot).toContain('Usted no puede firmar esto: hace falta un jefe de cuadrilla.');
    const shown = await say('swap sign step=S11 --as Ana');
    expect(shown).toContain('Esto es lo que usted firma.');
    expect(`${mayNot} ${shown}`).not.toMatch(englishWords);
    const lines = [
      'swap next --as Ana',
      'swap done step=S08 value="runs=Solo el extractor places=Un lugar" --as Ana',
      'swap done step=S08 value="runs=un tostador" --as Ana',
      'swap done step=S10 value=Ninguna --as Ana',
      'swap done step=E03 value=yes --as Ana',
      'swap stuck says="falta la llave" --as Beto',
      'swap pause --as Ana',
    ];
    for (const line of lines) expect(await say(line), line).not.toMatch(englishWords);
    expect(await say('swap status --as Ana')).toMatch(
      /En pausa por Ana\.[\s\S]*Altos por firmar[\s\S]*Permisos y licencia \(S11\)/,
    );
  });

  it('reads the answers in either language, and by the ids on the buttons', async () => {
    const say = session();
    await say('crew add Ana as=lead');
    await say('swap start list=before-leaving-the-shop --as Ana');
    expect(await say('swap done step=B01 value="Lo mismo" --as Ana')).toContain('Hecho: Unidad en el camión (B01).');
    expect(await say('swap done step=B03 value="unidad de prueba" --as Ana')).toContain(
      'Hecho: Probador en el camión (B03).',
    );
    expect(await say('swap done step=B05 value=sound --as Ana')).toContain('Hecho: Escalera en el camión (B05).');
  });

  it('asks, allows and stops the same as the English', () => {
    const shape = (list: (typeof checklists)['swap']) =>
      list.steps.map(({ id, code, signers, hold, overridable, risk, needs, evidence }) => ({
        ...{ id, code, signers, hold, overridable, risk, needs },
        evidence: evidence.map((part) => ({
          kind: part.kind,
          id: part.id,
          optional: part.optional,
          options:
            part.kind === 'choice'
              ? part.options.map((option) => [option.id, option.signers, option.stops !== undefined, option.onlyWhen])
              : [],
          stops: part.kind === 'number' && part.outsideStops !== undefined,
          ends: part.kind === 'number' ? [part.least?.otherwise.si, part.most?.otherwise.si, part.under?.si] : [],
        })),
      }));
    for (const [id, list] of Object.entries(checklists)) {
      expect(shape(checklistsIn.spanish[id as keyof typeof checklists]), id).toEqual(shape(list));
    }
  });
});
