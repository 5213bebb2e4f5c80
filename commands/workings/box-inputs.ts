import type { SupportFitting } from '#engine/electrical/box-contents.ts';
import type { Gauge } from '#engine/electrical/gauge.ts';
import type { Answer } from '#interview/question.ts';
import type { Citation } from '#knowledge/sources.ts';
import type { CubicInches, Metres } from '#quantity/units.ts';
import type { BoxAnswer } from '../questions/box-reading.ts';
import type { CodeInForce } from '../questions/electrical-code.ts';
import type { Straps, WireList } from '../questions/wire-list-reading.ts';

/** Everything told about one box. `told` says which of the optional things somebody answered. */
export interface BoxInputs {
  readonly box: BoxAnswer | null;
  readonly conductors: WireList;
  readonly grounds: WireList;
  readonly devices: readonly Straps[];
  readonly internalClamps: boolean;
  readonly serves: 'fan' | 'switch' | 'light' | 'other';
  readonly fixtureWires: WireList;
  readonly canopy: boolean;
  readonly passThrough: WireList;
  readonly loops: WireList;
  readonly pigtails: WireList;
  readonly supportFittings: readonly SupportFitting[];
  readonly terminalBlocks: WireList;
  readonly connectors: WireList;
  readonly deviceDepth: Metres | null;
  /** The editions named; more than one where two answers differ, none where nobody knows. */
  readonly editions: readonly CodeInForce[];
  /** What was told to be in the box besides, in one word each; what is counted stands in its own list. */
  readonly extras: Answer<readonly string[]>;
  readonly told: Readonly<
    Record<'conductors' | 'grounds' | 'devices' | 'clamps' | 'serves' | 'fixtureWires' | 'connectors', boolean>
  >;
}

/** One line of the count as a person reads it. */
export interface CountLine {
  readonly what: string;
  readonly count: number;
  /** The wire size whose room is one allowance; absent where a depth is charged instead. */
  readonly awg?: Gauge;
  readonly allowances: number;
  readonly each: CubicInches;
  readonly total: CubicInches;
  /** The sum, where it is not allowances times the room of one wire. */
  readonly how?: string;
  readonly rule: Citation;
}

export interface BoxCount {
  readonly edition: CodeInForce;
  /** False when nobody knew the edition, and the one that asks for the most room was taken. */
  readonly editionKnown: boolean;
  readonly lines: readonly CountLine[];
  readonly needed: CubicInches;
  /** The room of one wire of a size, under this code. */
  freeSpace(awg: Gauge): { readonly volume: CubicInches; readonly citation: Citation };
  /** The unit of the code's own table, and a volume in it. */
  readonly printed: { readonly unit: string; of(volume: CubicInches): number };
}

/** A thing that nobody told of, and the room it would take if it is there. */
export interface Untold {
  readonly what: string;
  readonly extra: CubicInches;
}
