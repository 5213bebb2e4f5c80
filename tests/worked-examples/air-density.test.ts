import { describe } from 'vitest';
import { densityRatio } from '#engine/air/density.ts';
import { celsius, metres } from '#quantity/units.ts';
import { checkRows, near, type Printed, si } from './duct-figures.ts';
import rows from './figures/air-density.json' with { type: 'json' };

describe('air gets lighter with height and warmth as the printed table says', () => {
  checkRows(rows, {
    densityRatio: ({ inputs, expected, tolerance }) => {
      const { altitude, temperature } = inputs as { altitude: Printed; temperature: Printed };
      const ratio = densityRatio({ altitude: metres(si(altitude)), temperature: celsius(si(temperature)) });
      near(ratio, expected as number, tolerance);
    },
  });
});
