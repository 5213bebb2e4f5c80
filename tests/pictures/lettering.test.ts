import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it, test } from 'vitest';
import { balanced, drawableText, type Setting, textWidth, wrapped } from '#pictures/lettering.ts';
import { asciiText, plainText } from '#pictures/plain-text.ts';
import { faceFamily, faceFiles, metrics } from '#pictures/type-face.ts';

const regular: Setting = { face: 'regular', size: 34 };
const bold: Setting = { face: 'bold', size: 42 };

/** What the renderer itself makes of a line of text. */
function renderedWidth(text: string, { face, size }: Setting): number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="2000" height="200"><text x="10" y="100" font-size="${size}" font-weight="${face === 'bold' ? 700 : 400}">${text}</text></svg>`;
  const font = { loadSystemFonts: false, fontFiles: Object.values(faceFiles()), defaultFontFamily: faceFamily };
  return new Resvg(svg, { font }).getBBox()?.width ?? 0;
}

test.each([
  ['Airflow needed, 80 cfm', regular],
  ['Works here: 68 cfm at 0.35 in. w.g.', regular],
  ['Temperature, °F — 24 h ≥ 32 °F', regular],
  ['Fan against 22 ft of 4 in duct', bold],
  ['שלום 12', regular],
])('a label is measured as wide as it is drawn: %s', (text, setting) => {
  // Ink may stand a little inside the advance width at either end, and kerning takes a hair off.
  const drawn = renderedWidth(text, setting);
  const measured = textWidth(text, setting);
  expect(measured).toBeGreaterThanOrEqual(drawn - 1);
  expect(measured).toBeLessThan(drawn * 1.03 + 8);
});

it('knows which characters the face holds', () => {
  expect(metrics('regular').holds('°')).toBe(true);
  expect(metrics('regular').holds('漢')).toBe(false);
  expect(metrics('regular').width('漢')).toBeGreaterThan(0);
});

describe('breaking labels into lines', () => {
  it('keeps within the width and never parts a number from its unit', () => {
    const lines = wrapped('Works here: 68 cfm at 0.35 in. w.g. of static pressure', { width: 250, lines: 9 }, regular);
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.every((line) => textWidth(line, regular) <= 250)).toBe(true);
    expect(lines.join(' ')).toBe('Works here: 68 cfm at 0.35 in. w.g. of static pressure');
    expect(lines.some((line) => /\d$/.test(line))).toBe(false);
  });

  it('ends what does not fit in an ellipsis', () => {
    const lines = wrapped('W'.repeat(200), { width: 300, lines: 2 }, regular);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^W+…$/);
    expect(textWidth(lines[0] ?? '', regular)).toBeLessThanOrEqual(300);
    expect(wrapped('one two three four five six', { width: 150, lines: 2 }, regular).at(-1)).toMatch(/…$/);
    expect(wrapped('', { width: 150, lines: 2 }, regular)).toEqual([]);
  });

  it('makes lines of about equal length', () => {
    expect(balanced('Duct, best to worst case', 2, regular)).toEqual(['Duct, best to', 'worst case']);
    expect(balanced('Duct', 2, regular)).toBeUndefined();
  });
});

describe('cleaning labels', () => {
  it('lets nothing through that could steer a terminal or turn the writing direction', () => {
    expect(plainText('\u001b[31mred\u0007 \u202etxt\u200b\nnext\ud800')).toBe('[31mred txt next');
  });

  it('drops pictographs the face cannot draw and keeps words it cannot draw', () => {
    expect(drawableText('Hot 🔥 fan 👩‍🔧')).toBe('Hot fan');
    expect(drawableText('漢字 fan')).toBe('漢字 fan');
  });

  it('spells signs out in ASCII', () => {
    expect(asciiText('−5 °F ≤ café → 4½ in × 2')).toBe('-5 deg F <= cafe -> 41/2 in x 2');
    expect(asciiText('漢')).toBe('?');
  });
});
