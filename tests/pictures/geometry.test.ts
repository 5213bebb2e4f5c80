import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Box,
  gapBetween,
  grown,
  holdsSpot,
  piecesWithin,
  type Spot,
  segmentMeets,
  segmentsCross,
  segmentWithin,
  sharedArea,
  spotsAlong,
} from '#pictures/geometry.ts';

const box: Box = { left: 0, top: 0, width: 100, height: 50 };
const spot = fc.tuple(fc.integer({ min: -200, max: 300 }), fc.integer({ min: -200, max: 300 }));

describe('cutting a curve at the edge of the plot', () => {
  it('keeps what is inside and drops what is outside', () => {
    expect(
      piecesWithin(
        [
          [-50, 25],
          [50, 25],
          [150, 25],
        ],
        box,
      ),
    ).toEqual([
      [
        [0, 25],
        [50, 25],
        [100, 25],
      ],
    ]);
    expect(
      piecesWithin(
        [
          [-50, -25],
          [150, -25],
        ],
        box,
      ),
    ).toEqual([]);
  });

  it('makes two pieces of a curve that leaves and comes back', () => {
    const pieces = piecesWithin(
      [
        [10, 40],
        [50, 100],
        [90, 40],
      ],
      box,
    );
    expect(pieces).toHaveLength(2);
    expect(pieces.flat().every((at) => holdsSpot(box, at))).toBe(true);
  });

  it('keeps a single point that is inside and drops one that is not', () => {
    expect(piecesWithin([[10, 10]], box)).toEqual([[[10, 10]]]);
    expect(piecesWithin([[10, 60]], box)).toEqual([]);
    expect(piecesWithin([], box)).toEqual([]);
  });

  it('never leaves a spot outside, whatever the curve', () => {
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 8 }), (spots) => {
        const roomy = grown(box, 1e-9);
        expect(
          piecesWithin(spots, box)
            .flat()
            .every((at) => holdsSpot(roomy, at)),
        ).toBe(true);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('agrees with itself about whether a segment meets a box', () => {
    fc.assert(
      fc.property(spot, spot, (from, to) => {
        expect(segmentMeets([from, to], box, 0)).toBe(segmentWithin(from, to, box) !== undefined);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

it('measures the overlap of boxes and the gap between them', () => {
  const beside: Box = { left: 110, top: 10, width: 20, height: 20 };
  expect(sharedArea(box, beside)).toBe(0);
  expect(gapBetween(box, beside)).toBe(10);
  expect(sharedArea(box, { ...beside, left: 90 })).toBe(200);
  expect(gapBetween(box, { ...beside, left: 90 })).toBe(-10);
});

it('tells crossing segments from those that only come close', () => {
  const slanted: readonly [Spot, Spot] = [
    [0, 0],
    [10, 10],
  ];
  expect(
    segmentsCross(slanted, [
      [0, 10],
      [10, 0],
    ]),
  ).toBe(true);
  expect(
    segmentsCross(slanted, [
      [0, 10],
      [4, 6],
    ]),
  ).toBe(false);
});

it('walks along a curve in steps no longer than asked', () => {
  expect(
    spotsAlong(
      [
        [0, 0],
        [10, 0],
      ],
      5,
    ),
  ).toEqual([
    [0, 0],
    [5, 0],
    [10, 0],
  ]);
  expect(spotsAlong([[3, 3]], 5)).toEqual([[3, 3]]);
});
