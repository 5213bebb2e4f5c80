import { balanced, lineSpacing, type Setting, textWidth, wrapped } from './lettering.ts';

/** One way of breaking a label into lines, with the room it takes. */
export interface Shape {
  readonly words: readonly string[];
  readonly width: number;
  readonly height: number;
}

const widest = 470;
const mostLines = 4;

/** The ways a label may be broken, fewest lines first. A very long label has one shape, and ends in an ellipsis. */
export function shapes(text: string, setting: Setting, padding: number): readonly Shape[] {
  if (text === '') return [];
  const shapeOf = (words: readonly string[]): Shape => ({
    words,
    width: Math.max(...words.map((line) => textWidth(line, setting))) + 2 * padding,
    height: words.length * setting.size * lineSpacing + 2 * padding,
  });
  const found: Shape[] = [];
  for (let lines = 1; lines <= mostLines; lines += 1) {
    const words = balanced(text, lines, setting);
    if (words === undefined) continue;
    const shape = shapeOf(words);
    if (shape.width <= widest) found.push(shape);
  }
  return found.length > 0
    ? found
    : [shapeOf(wrapped(text, { width: widest - 2 * padding, lines: mostLines }, setting))];
}
