import { boxThatFits } from '#engine/electrical/standard-box.ts';
import type { Finding } from '#findings/finding.ts';
import { boxRules, type StandardBox, standardBoxes } from '#knowledge/box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { within } from '#quantity/meets.ts';
import type { CubicInches } from '#quantity/units.ts';
import { cubicInchText } from '../questions/box-reading.ts';
import { type BoxStory, neededAtMost, roomText, tidy } from './box-findings.ts';
import { citations } from './citations.ts';

const shapes = ['octagon', 'square', 'device'] as const;
type Shape = (typeof shapes)[number];
const shapeWords: Readonly<Record<Shape, string>> = { octagon: 'octagon', square: 'square', device: 'device box' };

const isShape = (kind: StandardBox['kind'] | undefined): kind is Shape => shapes.some((shape) => shape === kind);

/** The smallest standard box: of the shape of the one that is there where one is large enough, else of any shape. */
export function boxThatFitsFinding(story: BoxStory): Finding {
  const { inputs, count, units } = story;
  const shape = inputs.box?.parts[0]?.standard?.kind;
  const fitting = inputs.devices.length > 0 ? shapes : shapes.filter((each) => each !== 'device');
  const of = (needed: CubicInches, wanted: readonly Shape[]) =>
    boxThatFits(
      needed,
      standardBoxes.filter(({ kind }) => isShape(kind) && wanted.includes(kind)),
    );
  const alike = isShape(shape) ? of(count.needed, [shape]) : undefined;
  const found = alike?.found ? alike : of(count.needed, fitting);
  const most = neededAtMost(story);
  const name = ({ name: called, volume }: StandardBox) => `${called}, ${cubicInchText(volume)}`;
  const marked = `any box marked ${cubicInchText(most)} or more`;
  const forMost = found.found && most > count.needed ? of(most, fitting) : undefined;
  return {
    id: 'box-that-fits',
    weight: 'advice',
    says: found.found
      ? within(most, found.box.volume)
        ? `Take the ${name(found.box)}, or larger: ${marked}.`
        : `Take ${forMost?.found ? `the ${name(forMost.box)}, or larger: ${marked}` : marked}, while it is not told what else is in it. As told, the ${name(found.box)} would do.`
      : `No standard box is large enough: take ${marked}, or add an extension ring, or split the wires over two boxes.`,
    value: found.found
      ? { number: found.box.volume, unit: 'in3', shown: `${found.box.name}, ${roomText(found.box.volume, units)}` }
      : { number: null, unit: 'in3', shown: 'none of the standard boxes' },
    working: [{ what: 'Needed', value: cubicInchText(count.needed) }],
    sources: citations(found.found ? cite(found.box) : undefined, cite(boxRules.fits)),
    table: {
      title: 'Smallest standard metal boxes that fit',
      columns: ['shape', 'box', 'cu in'],
      rows: shapes.map((each) => {
        const smallest = of(count.needed, [each]);
        return smallest.found
          ? [shapeWords[each], smallest.box.size, tidy(smallest.box.volume)]
          : [shapeWords[each], 'none large enough', ''];
      }),
    },
  };
}
