import type { CubicInches } from '#quantity/units.ts';
import type { Gauge } from './gauge.ts';

/**
 * What a wire does in the box. `spliced-or-terminated` ends here; `through` runs on unbroken; `loop` runs on unbroken with a
 * coil left in it long enough to be cut and spliced later; `pigtail` never leaves the box; `fixture-wire` belongs to the
 * light or fan mounted on the box.
 */
export type ConductorKind = 'spliced-or-terminated' | 'through' | 'loop' | 'pigtail' | 'fixture-wire';
export type SupportFitting = 'stud' | 'hickey';

export interface Conductors {
  readonly count: number;
  readonly awg: Gauge;
  readonly kind: ConductorKind;
}

/** The bare and green wires that enter the box. `isolated` is a second, separate set for isolated-ground receptacles. */
export interface Grounds {
  readonly count: number;
  readonly largestAwg: Gauge;
  readonly isolated?: { readonly count: number; readonly largestAwg: Gauge };
}

/** Switches, timers or receptacles, each on its own strap. */
interface Devices {
  readonly count: number;
  /** The thickest wire landed on the device. */
  readonly largestAwg: Gauge;
  /** How many gangs of box one device takes: 1 for anything that fits a single 2 in opening. */
  readonly gangs: number;
}

interface TerminalBlocks {
  readonly count: number;
  /** The thickest wire landed on the block. */
  readonly largestAwg: Gauge;
}

/** One box and everything in it. Counts are whole numbers, zero or more. */
export interface BoxFillInput {
  readonly box: {
    /** Marked or listed volume with its rings and barriers; absent when nobody knows it. */
    readonly volume?: CubicInches;
    /** True when the leads of a fan enter this box. The allowance for lamp canopies is then refused. */
    readonly servesFan: boolean;
  };
  readonly conductors: readonly Conductors[];
  readonly grounds: Grounds;
  readonly devices: readonly Devices[];
  /** True when one or more clamps hold cable inside the box. Connectors that clamp outside do not count. */
  readonly internalClamps: boolean;
  readonly supportFittings: readonly SupportFitting[];
  readonly terminalBlocks: readonly TerminalBlocks[];
  /** True when a domed lamp canopy covers this box and its wires end in it. */
  readonly canopy: boolean;
}

/** The count rules of one edition of the code, and the free space of one wire of each size. */
export interface BoxFillRules {
  readonly freeSpace: Readonly<Record<Gauge, CubicInches>>;
  /** Volume allowances for one wire of each kind. */
  readonly conductor: Readonly<Record<ConductorKind, number>>;
  /** For each gang a device takes. */
  readonly deviceGang: number;
  /** For all internal clamps together. */
  readonly clamps: number;
  /** For each type of support fitting present. */
  readonly supportFittingType: number;
  /** For each block; 0 in editions that do not count them. */
  readonly terminalBlock: number;
  readonly grounds: {
    /** For the first ground wires together. */
    readonly first: number;
    /** How many ground wires the first allowance covers; Infinity when it covers any number. */
    readonly firstCovers: number;
    /** For each ground wire after those. */
    readonly furtherEach: number;
    /** Whether an isolated set has an allowance of its own or is counted with the rest. */
    readonly isolatedSet: 'own-allowance' | 'with-the-rest';
  };
  readonly canopy: {
    /** How many fixture wires may be left out. */
    readonly upTo: number;
    /** Only wires thinner than this may be left out. */
    readonly thinnerThan: Gauge;
  };
}
