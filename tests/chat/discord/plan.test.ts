import { expect, it } from 'vitest';
import { answer, labels, question, stage } from './stage.ts';

const play = stage();

/** An invented house; what is not listed here nobody knew. */
const told = {
  'plan-covers': 'air-needed, duct, make-up, run-time, sweat, cost',
  'room-length': '9 ft',
  'room-width': '6 ft',
  'ceiling-height': '8 ft',
  fixtures: 'toilet, tub',
  'fan-curve': '110@0.1 84@0.25',
  collar: '4 in',
  'duct-run': '14 ft 4 in flex; 2 x elbow 90; wall cap',
};

/** More questions than a plan of these parts can have. */
const patience = 60;

it('a demo house is planned end to end, “don’t know” pressed at all that nobody measured', async () => {
  const { ann } = play.crew();
  let seen = await ann.slash('plan', told);
  let asked = 0;
  while (seen.embeds.length === 0 && asked < patience) {
    expect(question(seen)).toMatch(/[?.:]/);
    expect(labels(seen)).toContain("Don't know");
    seen = await ann.press(seen, "Don't know");
    asked += 1;
  }
  expect(asked).toBeGreaterThan(10);
  const [plan] = seen.embeds;
  expect(plan?.title).toMatch(/^The plan: the room needs 54 cfm/);
  expect(seen.text).toContain('Caution');
  expect(seen.text).toContain('The plan');
  expect(seen.files[0]?.name).toBe('plan.png');
  // Each part stands behind one press, and answers from the same sheet without asking again.
  const part = await ann.press(seen, 'Fan and duct');
  expect(part.embeds[0]?.title).toMatch(/will come out of this duct/);
});

it('a plan half answered goes on days later where it stood', async () => {
  const { ann } = play.crew();
  const first = await ann.slash('plan', { 'plan-covers': 'air-needed' });
  const room = await answer(ann, first, { 'room-length': '9 ft', 'room-width': '6 ft' });
  const again = await ann.slash('plan');
  expect(question(again)).toBe(question(room));
});
