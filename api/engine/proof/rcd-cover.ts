import type { Device } from '#model/installation.ts';
import { unitOfLoadSide } from '../circuit/load-side.ts';
import type { NetworkCircuit } from '../circuit/network.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';

/** Residual current up to which an RCD counts as additional protection, mA. Source: BS 7671 415.1.1. */
export const ADDITIONAL_PROTECTION_MA = 30;

/** The RCD that protects a whole circuit, as far as it is known. */
export interface RcdCover {
  /** `assumed-none`: told that there is none, but nobody has looked. */
  readonly state: 'covered' | 'none' | 'assumed-none' | 'unknown';
  /** What was found, or what the scheme brings; null where there is none. */
  readonly from: 'found' | 'scheme' | null;
  readonly type: 'AC' | 'A' | 'F' | 'B' | null;
  readonly mA: number | null;
  /** It waits before it opens (type S). */
  readonly isDelayed: boolean;
}

const unknown: RcdCover = { state: 'unknown', from: null, type: null, mA: null, isDelayed: false };

/**
 * The RCD of a whole circuit: what the scheme fits, else the circuit's own device, else the board's RCD before
 * it. Only 30 mA and less without delay counts. A board RCD that the survey does not tie to the circuit leaves it unknown,
 * as does a device nobody named, and an RCD that the survey only assumes; that there is none may be assumed as well.
 */
export function circuitRcd(worked: Worked, circuitId: string): RcdCover {
  const circuit = worked.proposed.circuits.find(({ id }) => id === circuitId);
  if (circuit === undefined) return unknown;
  const remedy = remedyCover(worked, circuit);
  if (remedy !== null) return remedy;
  const isFitted = isFittedByScheme(worked, circuit);
  if (circuit.device?.rcd) {
    if (!isFitted && isGuess(circuit.circuit?.certainty?.device)) return unknown;
    return coverBy(circuit.device.rcd, isFitted ? 'scheme' : 'found');
  }
  const board = boardCover(circuit);
  if (board !== null) return board;
  return { ...unknown, state: stateWithoutRcd(worked, circuit) };
}

function remedyCover(worked: Worked, circuit: NetworkCircuit): RcdCover | null {
  const remedy = worked.scheme?.remedies.find(
    ({ kind, at }) =>
      ((kind === 'rcbo' || kind === 'rcd-enclosure') && at === circuit.id) ||
      (kind === 'new-board' && at !== undefined && at === circuit.board?.id),
  );
  if (remedy === undefined) return null;
  // A remedy that names no RCD is the usual one: 30 mA, type A.
  return coverBy(remedy.device?.rcd ?? { type: 'A', mA: ADDITIONAL_PROTECTION_MA }, 'scheme');
}

/** Whether the scheme brings the circuit's device: with the circuit, or in the place of the one found. */
function isFittedByScheme(worked: Worked, { id, device, isNew }: NetworkCircuit): boolean {
  const found = worked.found.circuits.find((circuit) => circuit.id === id)?.device ?? null;
  return isNew || (device !== null && device !== found);
}

/** The board's RCD that the survey ties to the circuit; unknown where it only assumes so. */
function boardCover({ board, circuit }: NetworkCircuit): RcdCover | null {
  const rcd = board?.rcds.find(({ id }) => id === circuit?.upstreamRcd);
  if (rcd === undefined) return null;
  const isUnsure = isGuess(circuit?.certainty?.upstreamRcd) || isGuess(board?.certainty?.rcds);
  return isUnsure ? unknown : coverBy(rcd, 'found');
}

function coverBy(rcd: NonNullable<Device['rcd']>, from: 'found' | 'scheme'): RcdCover {
  const { type, mA } = rcd;
  const isDelayed = rcd.delayed === true;
  // What waits is too slow for whoever touches a live part, whatever opens it.
  const state = mA <= ADDITIONAL_PROTECTION_MA && !isDelayed ? 'covered' : 'none';
  return { state, from, type, mA, isDelayed };
}

/** What can be said of a circuit for which no RCD is recorded: that there is none, as surely as all of it was told. */
function stateWithoutRcd(worked: Worked, known: NetworkCircuit): 'none' | 'assumed-none' | 'unknown' {
  const { board, device, circuit, isNew } = known;
  // A device of which only the rating was told may be an RCBO.
  if (device === null || device.standard === undefined || device.standard === 'BS-EN-61009') return 'unknown';
  const remembered = board === null ? undefined : worked.job.boards.find(({ id }) => id === board.id);
  if (remembered === undefined) return 'unknown';
  // With RCDs in the board, somebody must have seen that this circuit is behind none of them.
  const isTold = remembered.rcds.length === 0 || (!isNew && circuit?.certainty?.upstreamRcd !== undefined);
  if (!isTold) return 'unknown';
  const told = [
    remembered.certainty?.rcds,
    isNew ? undefined : circuit?.certainty?.upstreamRcd,
    isNew || isFittedByScheme(worked, known) ? undefined : circuit?.certainty?.device,
  ];
  if (told.includes('unknown')) return 'unknown';
  return told.includes('assumed') ? 'assumed-none' : 'none';
}

/** How an accessory or a cable is protected by something nearer than the board. */
type LocalRcd = 'unit' | 'outlet' | null;

/**
 * The local RCD that protects what a node feeds: a fused unit with RCD somewhere before it.
 *
 * @param nodeId the node to look from, towards the origin; its own load side counts.
 */
export function rcdUnitBefore(worked: Worked, nodeId: string): boolean {
  const places = new Map(
    [...worked.shapes.values()].flatMap((shape) => shape.places.map((place) => [place.nodeId, place])),
  );
  const nodes = new Map(worked.proposed.nodes.map((node) => [node.id, node]));
  const seen = new Set<string>();
  let at: string | null = nodeId;
  while (at !== null && !seen.has(at)) {
    seen.add(at);
    const node = nodes.get(at);
    // A unit that a connection brings along has no point: it goes by its supply side.
    const unitId = node?.pointId ?? unitOfLoadSide(at);
    if (node?.kind === 'load-terminals' && hasRcd(worked, unitId, 'rcd-unit')) return true;
    at = places.get(at)?.upstreamNode ?? null;
  }
  return false;
}

/** The local RCD that protects a socket-outlet: a unit before it, or its own. */
export function localRcd(worked: Worked, nodeId: string): LocalRcd {
  if (rcdUnitBefore(worked, nodeId)) return 'unit';
  return hasRcd(worked, nodeId, 'rcd-outlet') ? 'outlet' : null;
}

/**
 * Whether an accessory has an RCD of its own: found in it, or fitted by the scheme.
 *
 * @param unitId the point's id; of a unit that a connection brings along, its node's.
 */
export const hasOwnRcd = (worked: Worked, unitId: string): boolean =>
  hasRcd(worked, unitId, 'rcd-unit') || hasRcd(worked, unitId, 'rcd-outlet');

function hasRcd(worked: Worked, pointId: string, kind: 'rcd-unit' | 'rcd-outlet'): boolean {
  const point = worked.plan.pointById.get(pointId);
  const fitted = worked.scheme?.remedies.some((remedy) => remedy.kind === kind && remedy.at === pointId);
  return fitted === true || point?.unit?.rcd === true || point?.features.includes('rcd') === true;
}
