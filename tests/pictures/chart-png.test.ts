import { expect, it } from 'vitest';
import { chartPng } from '#pictures/chart-png.ts';
import { chartElsewhere } from '#pictures/drawn-elsewhere.ts';
import { fanAgainstDuct } from './invented-charts.ts';

const sizeOf = (png: Uint8Array) => {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
};

it('makes a PNG of 1200 by 800 pixels, the same bytes every time', async () => {
  const [first, again] = [await chartPng(fanAgainstDuct), await chartPng(structuredClone(fanAgainstDuct))];
  expect([...first.slice(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect(new TextDecoder('latin1').decode(first.slice(12, 16))).toBe('IHDR');
  expect(sizeOf(first)).toEqual({ width: 1200, height: 800 });
  expect(Buffer.from(first).equals(Buffer.from(again))).toBe(true);
});

it('can be made as narrow as a phone shows it', async () => {
  expect(sizeOf(await chartPng(fanAgainstDuct, { width: 350 }))).toEqual({ width: 350, height: 233 });
});

it('leaves other work running while it draws', async () => {
  // The renderer is loaded by now, so the only thing left to wait for is the drawing itself.
  await chartPng(fanAgainstDuct);
  let turns = 0;
  const clock = setInterval(() => {
    turns += 1;
  }, 1);
  const drawing = chartPng(fanAgainstDuct);
  await drawing;
  clearInterval(clock);
  expect(turns).toBeGreaterThan(0);
});

it('is the same picture drawn in a thread of its own', async () => {
  const [here, elsewhere] = [await chartPng(fanAgainstDuct), await chartElsewhere(fanAgainstDuct)];
  expect(Buffer.from(here).equals(Buffer.from(elsewhere))).toBe(true);
}, 30_000);
