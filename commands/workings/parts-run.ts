import type { RunPart as TakeOffPart } from '#engine/take-off/duct-take-off.ts';
import { type FittingId, fittings } from '#knowledge/ducts.ts';
import { type Metres, metres } from '#quantity/units.ts';
import { diameterAt } from '../questions/duct-run-reading.ts';
import type { DuctRun, RunPart } from '../questions/run-parts.ts';
import { startOf } from './run-pieces.ts';

/** A fitting to buy. */
export interface FittingToBuy {
  readonly name: string;
  readonly diameter: Metres;
  /** Of a reducer or increaser: the size it goes to. */
  readonly to?: Metres;
  readonly count: number;
}

/** A run as a list for the van: what the take-off counts joints of, and what is bought by name. */
export interface RunToBuy {
  /** Pieces from the collar to the hood; the hood itself is the end of the last joint. */
  readonly pieces: readonly TakeOffPart[];
  readonly fittings: readonly FittingToBuy[];
  readonly end: FittingToBuy | null;
  readonly endsInSoffit: boolean;
  readonly endsOnRoof: boolean;
  readonly length: Metres;
}

/** Bends of the duct itself, and things that are no piece of their own. */
const notBought = new Set<FittingId>([
  'elbow-90-flex',
  'elbow-90-flex-kinked',
  'elbow-45-flex',
  'bend-at-collar',
  'exit-bare',
]);

const isEnd = (part: RunPart): part is Extract<RunPart, { part: 'fitting' }> & { fitting: FittingId } =>
  part.part === 'fitting' && part.fitting !== 'custom' && fittings[part.fitting].includesExit;

const rigidKinds = new Set(['smooth', 'spiral']);

/**
 * One part of the run as pieces in a row. Lengths are taken at the long end of what is known, so that the van has enough; a
 * reducer is taped at its larger size on both sides for the same reason.
 */
function piecesOf(part: RunPart, diameter: Metres): readonly TakeOffPart[] {
  if (part.part === 'duct') {
    return [{ kind: rigidKinds.has(part.kind) ? 'rigid' : 'flex', diameter, length: part.length.high }];
  }
  if (part.part === 'transition') return [{ kind: 'fitting', diameter: metres(Math.max(part.from, part.to)) }];
  if (part.fitting !== 'custom' && (notBought.has(part.fitting) || isEnd(part) || part.fitting === 'screen')) return [];
  return Array.from({ length: part.count }, () => ({ kind: 'fitting', diameter }) as const);
}

function boughtOf(part: RunPart, diameter: Metres): readonly FittingToBuy[] {
  if (part.part === 'duct' || isEnd(part)) return [];
  if (part.part === 'transition') {
    return [{ name: part.to < part.from ? 'Reducer' : 'Increaser', diameter: part.from, to: part.to, count: 1 }];
  }
  if (part.fitting === 'custom') return [{ name: 'Fitting with its own coefficient', diameter, count: part.count }];
  if (notBought.has(part.fitting)) return [];
  const { name } = fittings[part.fitting];
  return [{ name: name.charAt(0).toUpperCase() + name.slice(1), diameter, count: part.count }];
}

/** Fittings alike, counted together. */
function grouped(all: readonly FittingToBuy[]): readonly FittingToBuy[] {
  const groups = new Map<string, FittingToBuy>();
  for (const each of all) {
    const key = `${each.name} ${each.diameter} ${each.to ?? ''}`;
    groups.set(key, { ...each, count: (groups.get(key)?.count ?? 0) + each.count });
  }
  return [...groups.values()];
}

/** The parts of a run to buy, with the reducer a wide collar needs and every change of size that nobody mentioned. */
export function runToBuy(run: DuctRun, collar: Metres | null): RunToBuy {
  const pieces: TakeOffPart[] = [];
  const bought: FittingToBuy[] = [];
  let width = collar ?? startOf(run);
  run.parts.forEach((part, index) => {
    const own = diameterAt(run.parts, index) ?? width;
    const wanted = part.part === 'transition' ? part.from : own;
    if (Math.abs(wanted - width) > 1e-6) {
      const change: RunPart = { part: 'transition', from: width, to: wanted, coefficient: null };
      pieces.push(...piecesOf(change, wanted));
      bought.push(...boughtOf(change, wanted));
    }
    pieces.push(...piecesOf(part, own));
    bought.push(...boughtOf(part, own));
    width = own;
  });
  const last = run.parts.findLast((part) => isEnd(part) && part.fitting !== 'exit-bare');
  const end =
    last?.part === 'fitting' && last.fitting !== 'custom'
      ? { name: fittings[last.fitting].name, diameter: width, count: 1 }
      : null;
  return {
    pieces,
    fittings: grouped(bought),
    endsInSoffit: last?.part === 'fitting' && last.fitting === 'soffit-fitting',
    endsOnRoof: last?.part === 'fitting' && last.fitting === 'roof-cap',
    end: end && { ...end, name: end.name.charAt(0).toUpperCase() + end.name.slice(1) },
    length: metres(run.parts.reduce((sum, part) => sum + (part.part === 'duct' ? part.length.high : 0), 0)),
  };
}
