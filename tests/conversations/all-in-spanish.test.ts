import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { checklists } from '#knowledge/checklists.ts';
import { glossaryInSpanish } from '#knowledge/glossary-spanish.ts';
import { openStore } from '#store/store.ts';

/**
 * Pages that answer in English by decision: the sums and charts behind them are for whoever plans a job, and their words are
 * those of the printed tables and codes they are checked against. What they ask, and what /help tells of them, is Spanish.
 */
const answeredInEnglish = [
  'plan',
  'size',
  'duct',
  'reach',
  'runtime',
  'sweat',
  'makeup',
  'measure',
  'boxfill',
  'power',
  'cost',
  'parts',
  // An invented house to look around in.
  'demo',
] as const;

/** Words that no Spanish sentence holds and hardly an English one goes without. */
const english =
  /\b(?:the|and|is|are|was|were|of|with|without|not|you|your|this|that|these|those|what|which|when|where|who|from|they|their|does|than|there|must|should|needed|taken|measured|known|then|first|each|yet)\b/gi;

/** What people type is read in English whatever they speak, so examples of it stay as they are. */
const typed = [
  ...commands.flatMap((command) => [command.example, ...(command.kind === 'desk' ? (command.moreExamples ?? []) : [])]),
  '3 x 14/2 with ground',
  '110 fan 4in flex 20 ft 3 elbows roof cap what do I get',
  'switch by the door',
];

/** Names of actions and options, which are typed as they are in every language. */
const names = commands.flatMap((command) =>
  command.kind === 'answer'
    ? []
    : command.actions.flatMap(({ name, options }) => [
        ...(name === '' ? [] : [`${command.name} ${name}`]),
        ...options.map(({ id }) => ` ${id}: `),
      ]),
);

/** The English left in what was said: not what was quoted, nor the names of commands, options and answers, nor examples. */
function englishLeft(said: string): readonly string[] {
  const ours = [...typed, ...names]
    .reduce((left, example) => left.replaceAll(example, ''), said)
    .split('\n')
    .filter((line) => !/^\s*\[\d+\]/.test(line))
    .join('\n')
    .replace(/“[^”]*”/g, '')
    .replace(/\/[a-z]+(?: [a-z]+)?/g, '')
    .replace(/\b[a-z0-9]+(?:-[a-z0-9]+)+\b/g, '');
  return ours.match(english) ?? [];
}

/** Whoever speaks Spanish at one terminal, and everything said to them. */
function session() {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  const talk = terminalSession({
    store: store.scoped('prueba'),
    commands,
    who: 'van',
    paper: { width: 2000, colour: false },
    drawn: async () => undefined,
    language: 'spanish',
  });
  return { store: store.scoped('prueba'), say: (line: string): Promise<string> => talk.say(line) };
}

type Say = ReturnType<typeof session>['say'];

/** Nothing English in what is said to any of these. */
async function inSpanish(say: Say, lines: readonly string[]): Promise<void> {
  for (const line of lines) {
    const said = await say(line);
    expect(englishLeft(said), `${line}\n${said}`).toEqual([]);
  }
}

/** What a sheet knows before a swap, so that everything beside a step is worked out: invented. */
const known = [
  'size room-length="8 ft" room-width="5 ft" ceiling-height="8 ft" fixtures=toilet,tub toilet-compartment=no running=on-demand',
  'duct fan-curve="84@0.1 66@0.25 0@0.5" collar="4 in" duct-run="10 ft 4 in flex; 6 ft 4 in smooth; 2 x elbow 90; wall cap" airflow-needed="50 cfm"',
  'boxfill box="4 x 1-1/2 square" conductors="4x14, 2x12" grounds="3x12" serves=fan clamps=internal',
  'runtime shower-minutes="10 min" house-humidity="40 %" delivered-airflow="60 cfm"',
  'parts housing-size="10 x 10 x 7 in" joist-spacing="16 in" insulation-wanted=R-8 old-opening="9 x 9 in"',
] as const;

/** A crew of a lead and an apprentice, with that sheet. */
async function atWork() {
  const { say, store } = session();
  await say('crew add Ana as=lead');
  await say('crew add Beto as=apprentice');
  for (const line of known) {
    await say(line);
    await say('stop');
  }
  return { say, store };
}

describe('whoever speaks Spanish is told nothing in English', () => {
  for (const [list, { steps }] of Object.entries(checklists)) {
    it(`on any page of the list ${list}`, async () => {
      const { say } = await atWork();
      await inSpanish(say, [`swap start list=${list} --as Ana`]);
      await inSpanish(say, [...new Set(steps.map(({ code }) => `swap next step=${code} --as Ana`))]);
      await inSpanish(say, ['swap status --as Beto', 'swap carry --as Beto', 'swap known --as Ana']);
    });
  }

  it('when steps are recorded, refused, taken back and stopped', async () => {
    const { say } = await atWork();
    await say('swap start list=swap --as Ana');
    await inSpanish(say, [
      'swap next --as Nadie',
      'swap start list=nada',
      'swap done step=S01 --as Beto',
      'swap done step=XX --as Beto',
      'swap done step=S02 value="mañana" --as Beto',
      'swap sign step=S12 --as Beto',
      'swap sign step=S12 confirm=yes --as Ana',
      'swap override step=S12 reason="no hace falta" --as Ana',
      'swap photo file=/no/hay.jpg step=S01 --as Beto',
      'swap note says="falta la llave" --as Beto',
      'swap stuck says="falta la llave" --as Beto',
      'swap fact fact=access is=attic --as Ana',
      'swap box name="junto a la puerta" kind=switch-box --as Ana',
      'swap back --as Beto',
      'swap pause --as Ana',
      'swap next --as Beto',
      'swap resume --as Ana',
      'swap join --as Beto',
      'swap leave --as Beto',
      'swap baile',
      'swap next paso=3',
    ]);
  });

  it('by a callback, its danger stop, and the working behind it', async () => {
    const { say } = session();
    await inSpanish(say, [
      'callback',
      'zumba fuerte desde el martes y el espejo sigue empañado',
      'si',
      'no sé',
      'por qué',
      'atrás',
      'quizás',
      'responder ya',
      'cálculos',
    ]);
    const danger = await say('callback complaint="sonó la alarma de monóxido y nos duele la cabeza"');
    expect(englishLeft(danger)).toEqual([]);
    expect(danger).toContain('ALTO:');
    expect(danger.replace(/\s+/g, ' ')).toContain('Todos afuera ahora; llamen a los bomberos desde afuera');
  });

  it('by what /ask read of a line, and what it then asks', async () => {
    const { say } = session();
    for (const line of [
      'ask 8x10 bath 9 foot ceiling shower and toilet what cfm',
      'ask 110 fan 4in flex 20 ft 3 elbows roof cap what do I get',
      'ask 3 14/2 with ground and a switch in an 18 cube box ok?',
      'ask how long leave fan on 80cfm 5x8',
      'ask will the duct sweat attic 10F R8 20ft',
      'ask 30 inch door 3/4 gap 110 cfm',
      'ask bag test 39 gallon 7 seconds',
      'ask fan is loud and mirror fogs',
      'ask 2.4 x 1.8 bath what airflow',
      'ask 8x10 no sorry 8x12 bath what cfm',
      'ask hola',
      'ask baño de 8 por 10 pies techo de 9 regadera y excusado cuánto aire',
      'ask ventilador de 110, 20 pies de flex de 4, tres codos, salida de techo, qué me da',
      'ask prueba de bolsa 39 galones 7 segundos',
    ]) {
      const said = await say(line);
      // What /ask itself says stands above the page of the command it began, and that page is English by decision.
      const [own = ''] = said.replace(line.replace(/^ask /, ''), '').split('\n\n');
      expect(englishLeft(own), `${line}\n${said}`).toEqual([]);
      await say('stop');
    }
  });

  it('by /help, whole and for each command', async () => {
    const { say } = session();
    await inSpanish(say, ['help', ...commands.map(({ name }) => `help ${name}`), 'help baile']);
  });

  it('by /crew show, with and without a crew', async () => {
    const { say } = session();
    await inSpanish(say, ['crew show']);
    await say('crew add Ana as=lead');
    await say('crew set units=both building-code-edition=irc-2021 language=es');
    await say('crew qualify Ana what=licensed-electrician number=1 expires=2020-01-31');
    await say('crew retention 18 months');
    await inSpanish(say, ['crew show']);
  });

  it('by what changes the crew, done or refused', async () => {
    const { say } = session();
    await inSpanish(say, [
      'crew add Ana as=jefe',
      'crew add @ as=lead',
      'crew add Ana as=lead',
      'crew add Beto as=apprentice',
      'crew remove Ana as=nada',
      'crew remove Beto as=apprentice',
      'crew remove Nadie',
      'crew set',
      'crew set units=both building-code-edition=irc-2021 altitude="5000 ft" crew-phone=x crew-name=! time-zone=Marte language=ruso',
      'crew set units=metric',
      'crew set units=inch-pound',
      'crew set units=clear',
      'crew set altitude="no sé"',
      'crew qualify Ana what=combustion-tester number=. expires=mañana',
      'crew qualify Ana what=licensed-electrician number=1 expires=2020-01-31',
      'crew qualify Ana what=licensed-electrician number=1 expires=1/2/2027',
      'crew unqualify Ana what=combustion-tester',
      'crew unqualify Ana what=licensed-electrician',
      'crew retention mucho',
      'crew retention 18 months',
      'crew forget Nadie',
      'crew forget Ana',
      'crew forget Ana confirm=yes',
      'crew show',
    ]);
  });

  it('by the sheet of a job, opened, listed, taken back and closed', async () => {
    const { say } = session();
    await inSpanish(say, ['job list', 'job show', 'job open "Calle 5"', 'job open Calle', 'job open 99']);
    await say('size room-length="8 ft" room-width="5 ft" fixtures=toilet,tub ceiling-height=?');
    await say('stop');
    await inSpanish(say, [
      'job show',
      'job list',
      'job list state=closed',
      'job list state=all search=nada',
      'job undo',
      'job export',
      'job export as=csv',
      'job export name=99',
      'job close',
      'job list state=closed',
      'job open 1',
      'job causes 2026',
      'job causes este',
      'job erase 1 sure=2',
      'job erase 1 sure=1',
    ]);
    await say('callback confirmed-cause=bearing complaint="zumba" --as Ana');
    await say('stop');
    const year = new Date().getUTCFullYear();
    const causes = await say(`job causes ${year}`);
    expect(englishLeft(causes), causes).toEqual([]);
    expect(causes).toContain('con causa confirmada');
  });

  it('by the shelf of fans, but for what compares, brings in and invents', async () => {
    const { say } = session();
    await inSpanish(say, [
      'fan list',
      'fan show Nada',
      'fan export',
      'fan add Uno fan-curve=nada rated-sones=mucho',
      'fan add Uno fan-curve="84@0.1 66@0.25 0@0.5" collar="4 in" rated-sones=1.5',
      'fan list',
      'fan list search=nada',
      'fan show Uno',
      'fan use Uno',
      'fan export',
      'fan remove Nada',
    ]);
    await say('fan demo');
    await inSpanish(say, ['fan list', 'fan use "Demo"', 'fan remove Uno']);
  });

  it('by what is looked up, but for what a publication prints', async () => {
    const { say } = session();
    // A publication is named as it is printed, and what it alone says is marked.
    const told = async (line: string): Promise<string> =>
      (await say(line)).replace(/\nDe dónde viene\n[\s\S]*?(?=\n\n|$)/, '').replace(/^.*\(inglés\) .*$/gm, '');
    await inSpanish(told, [
      ...Object.values(glossaryInSpanish)
        .map(({ name }) => `lookup "${name}"`)
        .filter((_, at) => at % 4 === 0),
      'lookup capacitor',
      'lookup "zumba y no gira"',
      'lookup xyzzyq',
      'lookup disjuntor',
    ]);
    const printed = await say('lookup retiro');
    expect(printed.replace(/\s+/g, ' ')).toContain('Lo que está en inglés queda como está impreso');
    expect(printed).toMatch(/Dónde puede acabar el ducto, código de 2024[\s\S]*Cifras[\s\S]*3 ft[\s\S]*De dónde viene/);
  });

  it('by /handoff, before, during and after', async () => {
    const { say } = await atWork();
    await inSpanish(say, ['handoff']);
    await say('swap start list=control-only --as Ana');
    await inSpanish(say, ['handoff', 'handoff job=99']);
  });
});

describe('pages that are English by decision', () => {
  it('are all there is beside the ones walked above', () => {
    const walked = ['swap', 'callback', 'ask', 'help', 'crew', 'handoff', 'job', 'fan', 'lookup'];
    expect(commands.map(({ name }) => name).toSorted()).toEqual([...walked, ...answeredInEnglish].toSorted());
  });

  it('ask in Spanish all the same', async () => {
    for (const { name, kind } of commands) {
      if (kind !== 'answer') continue;
      const { say } = session();
      for (const line of [name, 'por qué', 'quizás mañana']) {
        const said = await say(line);
        expect(englishLeft(said), `${line} at ${name}\n${said}`).toEqual([]);
      }
    }
  });
});
