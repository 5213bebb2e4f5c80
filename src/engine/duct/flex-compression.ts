import { type Metres, metres, type Ratio, ratio } from '#quantity/units.ts';

/** Pressure correction, and its fall with diameter per metre (0.00496 per mm). Abushakra, Walker & Sherman 2004; Culp 2011. */
const correction = 58;
const fallWithDiameter = 4.96;

/** The ducts the correction was measured on: 6 to 10 in. Abushakra, Walker & Sherman 2004; Weaver & Culp. */
const smallestTested = metres(0.1524);
const largestTested = metres(0.254);

/** How many times more pressure a duct loses than the same length pulled tight, and how sure that is. */
export interface PressureFactor {
  readonly low: Ratio;
  readonly typical: Ratio;
  readonly high: Ratio;
  /** True when no test covers this duct and the range is a judgement. */
  readonly outsideTests: boolean;
}

/**
 * How much shorter flexible duct lies than it would if pulled tight, 0 to 1.
 *
 * c = (L_FE − L) / L_FE
 *
 * L_FE length pulled tight, L length as it lies.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, equation 23
 */
export function compressionOf({
  stretchedLength,
  installedLength,
}: {
  readonly stretchedLength: Metres;
  readonly installedLength: Metres;
}): Ratio {
  return ratio((stretchedLength - installedLength) / stretchedLength);
}

/**
 * The published correction for wire-helix flexible duct that is not pulled tight, taken as it stands at any diameter.
 *
 * PDCF = 1 + 58 c exp(−4.96 D)
 *
 * c compression 0 to 0.45, D inside diameter in m. It multiplies the loss of the tight duct (roughness 0.9 mm) over the
 * length as it lies. Measured on 6 to 10 in only.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, equation 22 (Abushakra, Walker & Sherman 2004; Culp 2011)
 */
export function publishedFlexFactor({
  compression,
  diameter,
}: {
  readonly compression: Ratio;
  readonly diameter: Metres;
}): Ratio {
  return ratio(1 + correction * compression * Math.exp(-fallWithDiameter * diameter));
}

/** A duct called 6 in that measures 150 mm is the duct that was tested. */
const nominal = 0.02;

const isOutsideTests = (diameter: Metres): boolean =>
  diameter < (1 - nominal) * smallestTested || diameter > (1 + nominal) * largestTested;

/**
 * Correction for wire-helix flexible duct that is not pulled tight, at one place in its range.
 *
 * F = F_tested + lean (PDCF(c, D) − F_tested),  F_tested = PDCF at the nearest of 6 to 10 in
 *
 * lean 0 holds to the nearest test, 1 to the formula carried past it, 0.5 is typical; it makes no difference inside the
 * tested sizes.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, equation 22; own working outside 6 to 10 in
 */
export function flexFactorAt({
  compression,
  diameter,
  lean,
}: {
  readonly compression: Ratio;
  readonly diameter: Metres;
  readonly lean: number;
}): Ratio {
  const formula = publishedFlexFactor({ compression, diameter });
  if (!isOutsideTests(diameter)) return formula;
  const nearest = metres(Math.min(Math.max(diameter, smallestTested), largestTested));
  const tested = publishedFlexFactor({ compression, diameter: nearest });
  return ratio(tested + lean * (formula - tested));
}

/**
 * Correction for wire-helix flexible duct that is not pulled tight, with its range outside the tested sizes.
 *
 * 6 to 10 in: PDCF(c, D).  Outside: between PDCF at the nearest tested size and PDCF(c, D), typical in the middle.
 *
 * The formula is an exponential in D: carried down to 3 or 4 in it climbs a third to a half above anything measured.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, equation 22; own working outside 6 to 10 in
 */
export function flexPressureFactor({
  compression,
  diameter,
}: {
  readonly compression: Ratio;
  readonly diameter: Metres;
}): PressureFactor {
  const tested = flexFactorAt({ compression, diameter, lean: 0 });
  const formula = flexFactorAt({ compression, diameter, lean: 1 });
  return {
    low: ratio(Math.min(formula, tested)),
    typical: flexFactorAt({ compression, diameter, lean: 0.5 }),
    high: ratio(Math.max(formula, tested)),
    outsideTests: isOutsideTests(diameter),
  };
}

/**
 * Correction for foil flexible duct that is not pulled tight. It holds its shape, its printed roughness already counts the
 * corrugations and nobody has published a squeezed test, so the likely answer takes no correction and only the high end
 * takes the one for wire-helix duct.
 *
 * low = typical = 1,  high = PDCF(c, 6 in or more)
 *
 * c compression 0 to 0.45. Always outside the tests, save when nothing is squeezed.
 *
 * @source own working; high end ASHRAE Handbook, Fundamentals, Duct Design, equation 22
 */
export function foilFlexPressureFactor({
  compression,
  diameter,
}: {
  readonly compression: Ratio;
  readonly diameter: Metres;
}): PressureFactor {
  const nearest = metres(Math.max(diameter, smallestTested));
  return {
    low: ratio(1),
    typical: ratio(1),
    high: publishedFlexFactor({ compression, diameter: nearest }),
    outsideTests: compression > 0,
  };
}
