/**
 * How many whole pieces of one length it takes to make up another: sticks of duct, rolls of tape, spaces between hangers.
 *
 * n = ⌈L / piece⌉
 *
 * A remainder of less than a billionth of a piece is dust of a unit conversion, not another piece.
 *
 * @source own working
 */
export function wholePieces(length: number, piece: number): number {
  return Math.max(0, Math.ceil(length / piece - 1e-9));
}
