import { describe, expect, it } from 'vitest';
import runtime from '#commands/runtime.ts';
import { findingOf, once } from './talked.ts';

const asked = (...words: readonly string[]) =>
  once(runtime, 'room-length=8 ft', 'room-width=5 ft', 'ceiling-height=8 ft', ...words);

describe('the sentence for the customer', () => {
  const told = (...words: string[]) => findingOf(asked('shower-minutes=10', ...words), 'tell-customer').says;

  it('comes right after the run time and can be read out', () => {
    expect(asked('shower-minutes=10', 'delivered-airflow=110').reply?.findings[1]?.id).toBe('tell-customer');
    expect(told('delivered-airflow=110')).toBe(
      'Tell the customer: leave the fan on for 25 minutes after each shower, with the bathroom door shut and the gap under it clear: that gap is where the fresh air comes in.',
    );
  });

  it('promises no time where none will do', () => {
    expect(told('delivered-airflow=15')).toMatch(/more than an hour after each shower for now/);
    expect(told('delivered-airflow=60', 'house-humidity=80')).toMatch(/air of the whole house is too damp/);
  });
});

it('advises no more air than size does, and sends more air to the door first', () => {
  const best = (...words: string[]) => findingOf(asked(...words), 'shortens').says;
  expect(best('delivered-airflow=50')).toMatch(/^Half as much air again: 75 cfm.*Check with \/makeup first/);
  for (const cfm of [80, 110]) expect(best(`delivered-airflow=${cfm}`)).toMatch(/^Squeegee/);
  expect(best('delivered-airflow=80', 'wipe-down=yes')).not.toMatch(/120 cfm/);
});
