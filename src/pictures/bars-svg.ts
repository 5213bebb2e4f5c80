import { scaleLinear } from 'd3-scale';
import type { Chart } from '#findings/reply.ts';
import { axisNumbers } from './axis-numbers.ts';
import { escaped, ink, lettering } from './chart-svg.ts';
import { axisSetting, pictureSize, titleSetting } from './frame.ts';
import { drawableText, lineSpacing, textWidth, wrapped } from './lettering.ts';
import { faceFamily } from './type-face.ts';

const { width } = pictureSize;
const margin = 36;
const line = axisSetting.size * lineSpacing;
const thick = 30;
/** A name, its bar, and the air under it. */
const rowHeight = line + thick + 30;
/** Names stand a little off the upright axis. */
const inset = 10;
const barColour = '#14507a';

/**
 * Named amounts as bars, the name above its bar and the amount at its end, on white and 1200 pixels wide. It is as high as it
 * has bars. The same chart always gives the same text.
 */
export function barsSvg({ title, x, bars = [], alt }: Chart): string {
  const titles = wrapped(drawableText(title), { width: width - 2 * margin, lines: 2 }, titleSetting);
  const top = margin + titles.length * titleSetting.size * lineSpacing + 14;
  const low = top + bars.length * rowHeight;
  const height = Math.round(low + 2 * line + 40);
  const amounts = bars.map(({ shown }) => drawableText(shown));
  const room = Math.max(0, ...amounts.map((text) => textWidth(text, axisSetting))) + 20;
  const across = scaleLinear([x.min, x.max], [margin, width - margin - room]);
  const numbers = axisNumbers(x, 8, () => true).filter(({ value }) => Number.isInteger(value));
  const soft = `font-size="${axisSetting.size}" fill="${ink.soft}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" font-family="${faceFamily}">`,
    `<title>${escaped(drawableText(title))}</title>`,
    `<desc>${escaped(drawableText(alt))}</desc>`,
    `<rect width="${width}" height="${height}" fill="${ink.paper}"/>`,
    ...titles.map((words, index) =>
      lettering(
        { words, at: [margin, margin + (index * lineSpacing + 0.8) * titleSetting.size], anchor: 'start' },
        `font-size="${titleSetting.size}" font-weight="700" fill="${ink.text}"`,
      ),
    ),
    `<path class="grid" d="${numbers.map(({ value }) => `M${tenths(across(value))},${tenths(top)}V${tenths(low)}`).join('')}" stroke="${ink.grid}" stroke-width="2"/>`,
    ...bars.flatMap(({ label, amount }, index) => {
      const y = top + index * rowHeight;
      const end = across(amount);
      const [name = ''] = wrapped(drawableText(label), { width: width - 2 * margin - inset, lines: 1 }, axisSetting);
      const under = y + line + 8 + thick / 2 + axisSetting.size * 0.36;
      return [
        lettering(
          { words: name, at: [margin + inset, y + axisSetting.size], anchor: 'start' },
          `font-size="${axisSetting.size}" fill="${ink.text}" stroke="${ink.paper}" stroke-width="9" paint-order="stroke"`,
        ),
        `<rect class="bar" x="${margin}" y="${tenths(y + line + 8)}" width="${tenths(end - margin)}" height="${thick}" fill="${barColour}"/>`,
        lettering(
          { words: amounts[index] ?? '', at: [end + 12, under], anchor: 'start' },
          `font-size="${axisSetting.size}" font-weight="700" fill="${ink.text}"`,
        ),
      ];
    }),
    `<path class="axes" d="M${margin},${tenths(top)}V${tenths(low)}H${tenths(width - margin)}" fill="none" stroke="${ink.axis}" stroke-width="3"/>`,
    ...numbers.map(({ value, words }) => lettering({ words, at: [across(value), low + line], anchor: 'middle' }, soft)),
    lettering({ words: drawableText(x.label), at: [width - margin, low + 2 * line + 4], anchor: 'end' }, soft),
    '</svg>',
  ].join('\n');
}

const tenths = (pixels: number): string => String(Math.round(pixels * 10) / 10);
