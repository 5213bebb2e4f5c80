import { describe, expect, it } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { asJson, exitCode, oneShot } from '#chat/one-shot.ts';
import duct from '#commands/duct.ts';
import size from '#commands/size.ts';
import type { Finding } from '#findings/finding.ts';
import { ask, type Interview } from '#interview/interview.ts';
import { knowing, length } from '../../interview/questions.ts';

const asked = (command: AnswerCommand<unknown>, ...words: string[]) => oneShot(command, words, { units: 'inch-pound' });
const json = (...given: Parameters<typeof asked>) => JSON.parse(asJson(asked(...given)));

const example = [
  'fan-curve=96@0 84@0.1 66@0.25 0@0.5',
  'collar=4 in',
  'duct-run=14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap',
];

describe('an answer in machine-readable form', () => {
  it('has the command, the status, every finding with value, working and sources, and nothing missing', () => {
    const answer = json(duct, ...example);
    expect(answer).toMatchObject({ command: 'duct', status: 'answered', missing: [] });
    expect(answer).not.toHaveProperty('problems');
    const [first] = answer.findings;
    expect(first).toMatchObject({
      id: 'delivered-airflow',
      weight: expect.stringMatching(/^(?:good|advice|caution|stop)$/),
      says: expect.stringMatching(/\.$/),
      value: {
        number: expect.any(Number),
        unit: 'm3/s',
        low: expect.any(Number),
        high: expect.any(Number),
        shown: expect.stringMatching(/cfm \([\d.]+ L\/s\)/),
      },
    });
    for (const finding of answer.findings as Finding[]) {
      for (const step of finding.working)
        expect(step).toMatchObject({ what: expect.any(String), value: expect.any(String) });
      expect(finding.sources.length, finding.id).toBeGreaterThan(0);
      for (const source of finding.sources) {
        expect(source).toEqual({
          id: expect.any(String),
          citation: expect.any(String),
          kind: expect.any(String),
          verified: expect.any(Boolean),
          ...('where' in source ? { where: expect.any(String) } : {}),
        });
      }
    }
  });

  it('the numbers are in SI, whichever units they were given in', () => {
    const inches = json(size, 'room-length=10 ft', 'room-width=8 ft', 'ceiling-height=8 ft');
    const words = ['room-length=3.048', 'room-width=2.4384', 'ceiling-height=2.4384'];
    const metric = JSON.parse(asJson(oneShot(size, words, { units: 'metric' })));
    const needed = (answer: { findings: Finding[] }) =>
      answer.findings.find(({ id }) => id === 'airflow-needed')?.value;
    // 1 cfm for each square foot: 80 cfm = 80 × 0.000471947443 m3/s (0.3048³ ÷ 60).
    expect(needed(inches)?.number).toBeCloseTo((80 * 0.3048 ** 3) / 60, 9);
    expect(needed(metric)?.number).toBeCloseTo((80 * 0.3048 ** 3) / 60, 9);
    expect(needed(inches)?.shown).toBe('80 cfm (37.8 L/s)');
    expect(needed(metric)?.shown).toBe('37.8 L/s (80 cfm)');
  });

  it('what was taken for granted is said with its reason', () => {
    const { assumed, assumedBecause } = json(size, 'room-length=8 ft', 'room-width=5 ft', 'fixtures=toilet, tub');
    expect(assumed).toContain('Ceiling height: 8 to 9 ft (2.44 to 2.74 m), most likely 8 ft');
    expect(assumedBecause).toContain('Ceiling height: Most houses have 8 ft ceilings; from common practice.');
    expect(assumed.join()).not.toContain('Fixtures');
  });

  it('“don’t know” is an answer, with its stand-in and a wider range', () => {
    const answer = json(size, 'room-length=dk', 'room-width=don’t know');
    expect(answer.status).toBe('answered');
    expect(answer.assumed).toContain('Room width: 5 to 8 ft (1.52 to 2.44 m), most likely 5 ft');
    const { value } = answer.findings[0];
    expect(value.low).toBeLessThan(value.high);
  });
});

describe('an answer that lacks something', () => {
  it('names everything that is needed at once, with what each takes', () => {
    const answer = json(duct);
    expect(answer).toMatchObject({ command: 'duct', status: 'needs-answers', findings: [] });
    expect(answer.missing.map(({ id }: { id: string }) => id)).toEqual(['fan-curve', 'collar', 'duct-run']);
    for (const { prompt, accepts } of answer.missing) {
      expect(prompt).toMatch(/[.?]$/);
      expect(accepts).toMatch(/such as|;/);
    }
    expect(answer).not.toHaveProperty('problems');
  });

  it('names every value that was not understood, and every strange name, in the same answer', () => {
    const answer = json(
      duct,
      'fan-curve=84@0.1 90@0.25',
      'collar=0',
      'duct-run=14 ft 4 in spaghetti',
      'altitude=ones(3000,3000)',
      'colour=white',
    );
    expect(answer.status).toBe('needs-answers');
    expect(answer.missing.map(({ id }: { id: string }) => id)).toEqual(['fan-curve', 'collar', 'duct-run', 'altitude']);
    expect(answer.problems.map(({ id }: { id?: string }) => id)).toEqual([
      undefined,
      'fan-curve',
      'collar',
      'duct-run',
      'altitude',
    ]);
    for (const { says } of answer.problems) expect(says).toMatch(/[.?]$/);
    expect(answer.problems[0].says).toContain('“colour”');
    expect(answer.problems[3].says).toContain('say what kind of duct');
  });

  it('a bad value that is not needed still stops the answer, rather than being passed over', () => {
    const answer = asked(size, 'room-length=8 ft', 'room-width=5 ft', 'ceiling-height=tall');
    expect(answer).toMatchObject({ status: 'needs-answers', missing: [{ id: 'ceiling-height' }] });
    expect(answer.reply).toBeUndefined();
    expect(exitCode(answer)).toBe(2);
  });

  it('a strange name alone stops the answer too', () => {
    const answer = asked(size, 'room-length=8 ft', 'room-width=5 ft', 'ceiling=8 ft');
    expect(answer.missing).toEqual([]);
    expect(answer.problems).toEqual([{ says: 'There is no “ceiling” here. Did you mean ceiling-height?' }]);
    expect(exitCode(answer)).toBe(2);
  });

  it('is answered from a job sheet where the words are silent', () => {
    const recall = knowing({
      'room-length': { value: { low: 3, typical: 3, high: 3 }, known: true },
      'room-width': { value: { low: 2, typical: 2, high: 2 }, known: true },
    });
    const answer = oneShot(size, ['room-width=3 m'], { units: 'metric', recall });
    const area = answer.reply?.findings.find(({ id }) => id === 'by-floor-area')?.working[0];
    expect(area).toMatchObject({ what: 'Floor area', value: expect.stringMatching(/^9 m²/) });
  });
});

const plain = { working: [], sources: [] } as const;

/** A command that answers with the weights it is given. */
function answering(...weights: readonly Finding['weight'][]): AnswerCommand<unknown> {
  function* interview(): Interview<unknown> {
    return yield* ask(length);
  }
  return {
    kind: 'answer',
    name: 'trial',
    summary: '',
    example: '',
    takes: [length],
    interview,
    answer: () => ({
      headline: 'Done.',
      findings: weights.map((weight, index) => ({ id: `finding-${index}`, weight, says: `${weight}.`, ...plain })),
    }),
  };
}

describe('a finding that says stop', () => {
  const stopped = asked(answering('good', 'stop', 'caution'), 'length=3 m');

  it('makes the status stopped and the exit code 3', () => {
    expect(stopped.status).toBe('stopped');
    expect(exitCode(stopped)).toBe(3);
  });

  it('comes first, and the other findings follow it', () => {
    const weights = JSON.parse(asJson(stopped)).findings.map(({ weight }: Finding) => weight);
    expect(weights).toEqual(['stop', 'good', 'caution']);
  });

  it('is not made of cautions', () => {
    const answer = asked(answering('caution', 'advice'), 'length=3 m');
    expect(answer.status).toBe('answered');
    expect(exitCode(answer)).toBe(0);
  });
});

describe('a finding with more to it', () => {
  it('passes on its cause, its table and a value without a number', () => {
    const command: AnswerCommand<unknown> = {
      ...answering(),
      answer: () => ({
        headline: 'Done.',
        findings: [
          {
            id: 'likely-cause',
            weight: 'advice',
            says: 'It stays dry.',
            cause: 'crushed-duct',
            value: { number: null, unit: 'm', shown: 'stays dry' },
            table: { title: 'T', columns: ['a'], rows: [['1']] },
            ...plain,
          },
        ],
      }),
    };
    expect(JSON.parse(asJson(asked(command, 'length=3 m'))).findings[0]).toEqual({
      id: 'likely-cause',
      weight: 'advice',
      says: 'It stays dry.',
      cause: 'crushed-duct',
      value: { number: null, unit: 'm', shown: 'stays dry' },
      table: { title: 'T', columns: ['a'], rows: [['1']] },
      working: [],
      sources: [],
    });
  });
});
