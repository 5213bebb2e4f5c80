/** Published explicit stand-ins for Colebrook–White, used only to cross-check the engine's solution. */
interface Flow {
  readonly reynolds: number;
  readonly relativeRoughness: number;
}

/** Haaland 1983. */
export const haaland = ({ reynolds, relativeRoughness }: Flow): number =>
  (-1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;

/** Swamee & Jain 1976. */
export const swameeJain = ({ reynolds, relativeRoughness }: Flow): number =>
  0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;

/** Altshul 1952, as corrected by Tsal 1989. Reads up to 13 % low at the roughness of flexible duct. */
export const altshulTsal = ({ reynolds, relativeRoughness }: Flow): number => {
  const plain = 0.11 * (relativeRoughness + 68 / reynolds) ** 0.25;
  return plain < 0.018 ? 0.85 * plain + 0.0028 : plain;
};

/** Colebrook–White by halving, slow and sure, to the last digit. */
export const colebrookByHalving = ({ reynolds, relativeRoughness }: Flow): number => {
  let [low, high] = [1, 30];
  for (let halving = 0; halving < 200; halving++) {
    const x = (low + high) / 2;
    if (x + 2 * Math.log10(relativeRoughness / 3.7 + (2.51 * x) / reynolds) < 0) low = x;
    else high = x;
  }
  return ((low + high) / 2) ** -2;
};
