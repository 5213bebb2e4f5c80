/** Up to here the air slides in layers and the wall's roughness does not matter. ASHRAE Handbook, Fundamentals, Fluid Flow. */
export const laminarEnd = 2300;
/** From here on the flow is turbulent and Colebrook–White holds. Common textbook figure; Moody 1944 draws the gap alike. */
export const turbulentStart = 4000;

/** Newton settles in two or three steps from Haaland's start; the cap is there so that no input can hang a reply. */
const mostSteps = 20;
/**
 * Newton squares its error: after a step s no more than 0.02 s² is left (half the equation's curvature over its slope, worst at
 * a smooth wall and Re 4000), so a step this small leaves under 1e-10.
 */
const settled = 5e-5;
const perDecade = 2 / Math.LN10;
const haalandPerDecade = -1.8 / Math.LN10;

/** What the wall of a duct contributes to Colebrook–White, worked out once per duct instead of once per airflow. */
export interface Wall {
  /** ε / 3.7 D. */
  readonly roughness: number;
  /** (ε / 3.7 D)^1.11, the same term in Haaland's explicit form. */
  readonly start: number;
}

/**
 * A duct wall made ready for many airflows, from its relative roughness.
 *
 * ε/(3.7 D) and (ε/(3.7 D))^1.11
 *
 * ε height of the roughness, D diameter, same unit; ε/D from 0 to about 0.05.
 *
 * @source Colebrook 1939 and Haaland 1983, roughness terms
 */
export function wallOf(relativeRoughness: number): Wall {
  const roughness = relativeRoughness / 3.7;
  return { roughness, start: roughness ** 1.11 };
}

/**
 * Darcy friction factor in tumbling flow: the share of velocity pressure lost to the wall per diameter of length.
 *
 * 1/√f = −2 log₁₀( ε/(3.7 D) + 2.51/(Re √f) )
 *
 * Solved for 1/√f by Newton's method to 1e-10, starting from Haaland 1983. For Re of 4000 and more.
 *
 * @source Colebrook 1939; ASHRAE Handbook, Fundamentals, Duct Design, equation 19
 */
function turbulentFrictionFactor(reynolds: number, wall: Wall): number {
  const viscous = 2.51 / reynolds;
  let x = haalandPerDecade * Math.log(wall.start + 6.9 / reynolds);
  for (let step = 0; step < mostSteps; step++) {
    const inner = wall.roughness + viscous * x;
    const change = ((x + perDecade * Math.log(inner)) * inner) / (inner + perDecade * viscous);
    x -= change;
    if (Math.abs(change) < settled) break;
  }
  return 1 / (x * x);
}

/**
 * Darcy friction factor at any airflow, sliding, tumbling or between, for a wall made ready by {@link wallOf}.
 *
 * Re ≤ 2300: f = 64/Re.  Re ≥ 4000: Colebrook–White.  Between: a straight line in Re from one to the other.
 *
 * No law holds between 2300 and 4000. The line is there so that pressure never jumps nor falls as flow rises, because a
 * jump would sit exactly where a fan is found unable to push.
 *
 * @source Hagen–Poiseuille; Colebrook 1939; own working between 2300 and 4000
 */
export function wallFrictionFactor(reynolds: number, wall: Wall): number {
  if (reynolds >= turbulentStart) return turbulentFrictionFactor(reynolds, wall);
  if (reynolds <= laminarEnd) return 64 / reynolds;
  const share = (reynolds - laminarEnd) / (turbulentStart - laminarEnd);
  return (1 - share) * (64 / laminarEnd) + share * turbulentFrictionFactor(turbulentStart, wall);
}

/**
 * Darcy friction factor at any airflow.
 *
 * As {@link wallFrictionFactor}; Re above 0, ε/D from 0 to about 0.05.
 *
 * @source Hagen–Poiseuille; Colebrook 1939; own working between 2300 and 4000
 */
export function frictionFactor({
  reynolds,
  relativeRoughness,
}: {
  readonly reynolds: number;
  readonly relativeRoughness: number;
}): number {
  return wallFrictionFactor(reynolds, wallOf(relativeRoughness));
}
