import { describe, expect, it } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { wordsOfReply } from './at-a-desk.ts';
import { jobWith } from './swap-job.ts';

const found = ({ findings }: { readonly findings: readonly Finding[] }, id: string): Finding | undefined =>
  findings.find((each) => each.id === id);

const fanAndDuct = {
  'fan-curve': '110@0.1 84@0.25',
  collar: '4 in',
  'duct-run': '14 ft 4 in flex slack; 2 x elbow 90; wall cap',
};
/** 54 sq ft at 1 cfm each. */
const room = { 'room-length': '9 ft', 'room-width': '6 ft', 'ceiling-height': '8 ft', fixtures: 'toilet, tub' };
/** Four 14 AWG, two 18 AWG leads and grounds: 4 × 2 + 2 × 1.5 + 2 = 13 of 21 in³, NEC 2023 table 314.16(B)(1). */
const fanBox = {
  box: '21 in3',
  conductors: '4x14',
  serves: 'fan',
  grounds: '2x14',
  clamps: 'none',
  'fixture-wires': '2x18',
  'electrical-code-edition': '2023',
};

describe('the airflow measured at the end', () => {
  it('is held at once against the need, the prediction and the fan before', () => {
    const job = jobWith({ ...fanAndDuct, ...room });
    job.to('measured-airflow');
    const enough = job.answer('measured-airflow', 'mean=96 cfm low-end=88 cfm');
    expect(found(enough, 'against-needed')).toMatchObject({ weight: 'good' });
    expect(found(enough, 'against-needed')?.says).toContain('88 cfm, meets the 80 cfm needed');
    expect(found(enough, 'against-predicted')?.value?.shown).toMatch(/above the \d+ cfm predicted: higher/);
    expect(found(enough, 'before-and-after')?.says).toBe('Before the work it moved 31 cfm, now 96 cfm.');
  });

  it('says what to check where it is short, and the step stays open', () => {
    const job = jobWith({ ...fanAndDuct, ...room });
    job.to('measured-airflow');
    const short = job.answer('measured-airflow', 'mean=35 cfm low-end=32 cfm method=bag');
    const words = wordsOfReply(short);
    expect(words).toContain('Recorded, and the step stays open.');
    expect(found(short, 'against-needed')).toMatchObject({ weight: 'caution' });
    expect(found(short, 'against-needed')?.says).toContain('Too little: 80 cfm is needed');
    expect(found(short, 'against-predicted')?.says).toMatch(/less than the \d+ cfm predicted.+Look for sagging/);
    expect(words).toContain('Measured then with a flow hood with a fan of its own and now with a timed bag');
  });

  it('counts the error of the meter, whatever low end is written', () => {
    const job = jobWith({ ...fanAndDuct, ...room });
    job.to('measured-airflow');
    // LBNL-5982E, abstract: the best hoods err by 6 %; 84 cfm less 6 % is 79 cfm, under the 80 agreed.
    const bold = job.answer('measured-airflow', 'mean=84 cfm low-end=84 cfm');
    expect(found(bold, 'low-end-too-high')?.says).toContain(
      'errs by 6 % or more: the low end of 84 cfm is 79 cfm at best, not 84 cfm',
    );
    expect(found(bold, 'against-needed')?.says).toContain('Not shown to be enough');
    expect(job.answer('measured-airflow', 'mean=84 cfm low-end=90 cfm').headline).toBe(
      'The low end lies below the mean, not above it.',
    );
  });

  it('warns where less was agreed than the room needs', () => {
    const job = jobWith({ ...room, 'airflow-needed': '95 cfm' });
    job.to('measured-airflow');
    const measured = job.answer('measured-airflow', 'mean=96 cfm low-end=88 cfm');
    expect(wordsOfReply(measured)).toContain('80 cfm was agreed, and the room needs 95 cfm.');
    expect(found(measured, 'against-needed')?.says).toContain('Not shown to be enough: 95 cfm is needed');
  });

  it('names what the sheet lacks and the command that asks for it', () => {
    const job = jobWith();
    job.to('measured-airflow');
    const words = wordsOfReply(job.answer('measured-airflow', 'mean=96 cfm low-end=88 cfm'));
    expect(words).toMatch(/Not compared with a prediction: the sheet lacks .*duct.*\. \/duct asks for it\./);
    expect(words).toContain('What the room needs is not on the sheet, only what was agreed counts.');
  });

  it('says at which setting it was predicted', () => {
    const job = jobWith({ ...fanAndDuct, ...room, 'fan-settings': '50, 80, 110' });
    job.to('measured-airflow');
    const saysOf = (value: string) => found(job.answer('measured-airflow', value), 'against-predicted')?.says;
    expect(saysOf('mean=96 cfm low-end=88 cfm')).toContain(
      'Reckoned at 110 cfm, its fastest; the sheet names no setting.',
    );
    job.note({ 'fan-setting': '80' });
    expect(saysOf('mean=95 cfm low-end=87 cfm')).toContain('Reckoned at 80 cfm, the setting on the sheet.');
  });

  it('takes over what /measure came to, but not what the old fan moved', () => {
    const job = jobWith({ 'measured-airflow': '30 to 34 cfm, most likely 32' });
    job.to('measured-airflow');
    expect(wordsOfReply(job.page('measured-airflow'))).toContain('/measure works out mean and low end');
    job.later();
    job.note({ 'measured-airflow': '86 to 98 cfm, most likely 92' });
    const page = job.page('measured-airflow');
    expect(wordsOfReply(page)).toContain('/measure came to 86 to 98 cfm');
    const [press] = page.presses ?? [];
    expect(press?.label).toBe('Record Mean of three: 92 cfm; Low end of its range: 86 cfm');
    const recorded = job.answer('measured-airflow', press?.given['value'] ?? '');
    expect(found(recorded, 'against-needed')?.says).toContain('86 cfm, meets the 80 cfm needed');
  });
});

describe('the room in a box', () => {
  it('is worked out from what the sheet says is in it, with the edition', () => {
    const job = jobWith(fanBox);
    job.to('box-fill');
    const page = job.page('P07 fan');
    expect(found(page, 'volume-left')).toMatchObject({ weight: 'good', value: { number: 8 } });
    expect(found(page, 'fill-needed')?.says).toContain('13 cu in (213 cm³) by NEC 2023');
    const less = job.answer('P07 fan', 'spare=20 cu in');
    expect(wordsOfReply(less)).toContain('only 8 cu in (131.1 cm³) is left. That is recorded.');
  });

  it('stops where it does not fit, whatever is written', () => {
    const job = jobWith({ ...fanBox, conductors: '12x12' });
    job.to('box-fill');
    expect(found(job.page('P07 fan'), 'volume-left')).toMatchObject({ weight: 'stop' });
    const stopped = job.answer('P07 fan', 'spare=3 cu in');
    expect(wordsOfReply(stopped)).toContain('Recorded, and the job stops here.');
    expect(found(job.status(), 'stopped')?.says).toContain('Do not close this box.');
  });

  it('asks for what the sheet lacks, and never counts one box for another', () => {
    const bare = jobWith();
    bare.to('box-fill');
    expect(wordsOfReply(bare.page('P07 fan'))).toMatch(
      /The fan is not counted: the sheet lacks box, insulated wires.*\/boxfill serves=fan asks for it\./,
    );
    const other = jobWith({ ...fanBox, serves: 'switch' });
    other.to('box-fill');
    expect(wordsOfReply(other.page('P07 fan'))).toContain('The box counted on the sheet is another one');
    expect(found(other.page('P07 switch box'), 'volume-left')?.value?.number).toBe(8);
  });
});

describe('the time set in the control', () => {
  it('goes by the airflow worked out, and once measured by the measured one', () => {
    const job = jobWith({ ...fanAndDuct, ...room });
    job.to('run-time-set');
    // The list measures first; before that the duct is all there is.
    const measured = job.page('run-time-set');
    expect(wordsOfReply(measured)).toContain('Reckoned with the airflow measured on this list.');
    const before = found(measured, 'run-time')?.value?.number ?? 0;
    expect(before).toBeGreaterThan(0);
    const set = job.answer('run-time-set', '10 min');
    expect(wordsOfReply(set)).toMatch(/Set to 10 min, and about \d+ min is needed\./);
    const weaker = job.answer('measured-airflow', 'mean=40 cfm low-end=36 cfm');
    expect(found(weaker, 'run-time')?.value?.number ?? 0).toBeGreaterThan(before);
    expect(wordsOfReply(weaker)).toContain('Set to 10 min');
  });

  it('uses the duct on the sheet until it is measured', () => {
    const job = jobWith({ ...fanAndDuct, ...room });
    job.to('measured-airflow');
    expect(wordsOfReply(job.page('run-time-set'))).toContain(
      'Reckoned with the airflow worked out from fan and duct, until it is measured.',
    );
  });

  it('names what the sheet lacks', () => {
    const job = jobWith();
    job.to('measured-airflow');
    expect(wordsOfReply(job.page('run-time-set'))).toMatch(
      /Run time not worked out: the sheet lacks room length, room width, airflow really delivered\. \/runtime asks for it\./,
    );
  });
});

describe('the work at the duct', () => {
  it('is counted out from the run on the sheet', () => {
    const job = jobWith(fanAndDuct);
    job.to('seal');
    const seal = found(job.page('seal'), 'duct-tape');
    expect(seal?.says).toMatch(/^Seal 4 joints, collar and hood among them: \d+ ft .+ of foil tape, waste included\.$/);
    // One turn round 4 in and a lap of 1 in at each of 4 joints, a tenth for waste: common practice, no source.
    expect(seal?.value?.number).toBeCloseTo(4 * (Math.PI * 4 + 1) * 0.0254 * 1.1, 3);
    expect(wordsOfReply(job.page('metal-joints'))).toMatch(
      /has 4 joints, collar and hood among them, and takes \d+ screws/,
    );
    expect(wordsOfReply(job.page('metal-support'))).toContain('takes 3 hangers: every 4 ft of flex and 10 ft of metal');
    expect(wordsOfReply(job.page('slope'))).toContain('falls 3 1/2 in');
  });

  it('says which command takes the run where the sheet has none', () => {
    const job = jobWith();
    job.to('seal');
    expect(wordsOfReply(job.page('seal'))).toMatch(/Not counted out: the sheet lacks duct.*\. \/parts asks for it\./);
  });
});
