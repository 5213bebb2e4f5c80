/**
 * A smooth curve through points that never rises between them. Everything is kept in flat arrays, so that the curve can be
 * refilled and read a thousand times over without leaving anything to clean up.
 */
export interface MonotoneCubic {
  /** Where the knots lie, rising. */
  readonly x: Float64Array;
  /** The value at each knot, never rising. */
  readonly y: Float64Array;
  /** Slope at each knot. */
  readonly slope: Float64Array;
  /** Second and third coefficient of the cubic that starts at each knot, two by two. */
  readonly bend: Float64Array;
}

/**
 * Room for a curve of so many knots, to be filled in.
 *
 * four arrays
 *
 * @source own working
 */
export const emptyCubic = (knots: number): MonotoneCubic => ({
  x: new Float64Array(knots),
  y: new Float64Array(knots),
  slope: new Float64Array(knots),
  bend: new Float64Array(2 * knots),
});

/** The knot that starts the piece in which `x` lies; the first or last piece when it lies outside. */
function pieceAt({ x: knots }: MonotoneCubic, x: number): number {
  const last = knots.length - 2;
  let piece = 0;
  while (piece < last && x >= (knots[piece + 1] as number)) piece += 1;
  return piece;
}

/**
 * The curve's slopes and coefficients, worked out afresh from its knots: three-point slopes, held to at most three times
 * the flatter neighbouring chord, which is enough to keep every piece from turning.
 *
 * m_i = (h_i Δ_{i−1} + h_{i−1} Δ_i) / (h_{i−1} + h_i),  |m_i| ≤ 3 min(|Δ_{i−1}|, |Δ_i|)
 *
 * h width and Δ chord slope of a piece, m slope at a knot. Needs two knots or more, x rising, y never rising.
 *
 * @source Fritsch and Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980): the square 0 to 3
 */
export function smoothCubic({ x, y, slope, bend }: MonotoneCubic): void {
  const last = x.length - 1;
  let width = 0;
  let chord = 0;
  for (let i = 0; i < last; i += 1) {
    const nextWidth = (x[i + 1] as number) - (x[i] as number);
    const nextChord = ((y[i + 1] as number) - (y[i] as number)) / nextWidth;
    if (i > 0) {
      const threePoint = (nextWidth * chord + width * nextChord) / (width + nextWidth);
      slope[i] = Math.max(threePoint, 3 * Math.max(chord, nextChord));
      if (i === 1) slope[0] = endSlope(chord, nextChord, width / (width + nextWidth));
      if (i === last - 1) slope[last] = endSlope(nextChord, chord, nextWidth / (width + nextWidth));
    } else if (last === 1) {
      slope[0] = nextChord;
      slope[1] = nextChord;
    }
    width = nextWidth;
    chord = nextChord;
  }
  for (let i = 0; i < last; i += 1) {
    const h = (x[i + 1] as number) - (x[i] as number);
    const rise = ((y[i + 1] as number) - (y[i] as number)) / h;
    const from = slope[i] as number;
    const to = slope[i + 1] as number;
    bend[2 * i] = (3 * rise - 2 * from - to) / h;
    bend[2 * i + 1] = (from + to - 2 * rise) / (h * h);
  }
}

/** Three-point slope at an end, held between flat and three times the end chord. `share` is the end piece's part of both. */
const endSlope = (near: number, far: number, share: number): number =>
  Math.min(0, Math.max((1 + share) * near - share * far, 3 * near));

/**
 * The curve's value. Before the first knot it goes on as a straight line; past the last one it stays at the last value.
 *
 * y = y_i + d (m_i + d (b_i + d c_i)),  d = x − x_i
 *
 * y_i value and m_i slope at the knot before x, b_i and c_i the coefficients kept for that piece. Any x.
 *
 * @source Fritsch and Carlson 1980, the cubic in power form
 */
export function cubicValue(curve: MonotoneCubic, x: number): number {
  const { x: knots, y, slope, bend } = curve;
  const last = knots.length - 1;
  if (x >= (knots[last] as number)) return y[last] as number;
  const i = pieceAt(curve, x);
  const d = x - (knots[i] as number);
  if (d < 0) return (y[0] as number) + d * (slope[0] as number);
  return (
    (y[i] as number) + d * ((slope[i] as number) + d * ((bend[2 * i] as number) + d * (bend[2 * i + 1] as number)))
  );
}

/**
 * How fast the curve falls at `x`.
 *
 * y′ = m_i + d (2 b_i + 3 d c_i)
 *
 * Letters as in the value. Constant before the first knot, zero past the last.
 *
 * @source Fritsch and Carlson 1980, the cubic in power form, differentiated
 */
export function cubicSlope(curve: MonotoneCubic, x: number): number {
  const { x: knots, slope, bend } = curve;
  if (x >= (knots[knots.length - 1] as number)) return 0;
  const i = pieceAt(curve, x);
  const d = x - (knots[i] as number);
  if (d < 0) return slope[0] as number;
  return (slope[i] as number) + d * (2 * (bend[2 * i] as number) + 3 * d * (bend[2 * i + 1] as number));
}
