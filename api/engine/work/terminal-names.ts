import type { TerminalName, TerminalSide } from './connection-place.ts';
import type { Core } from './core-colour.ts';

/** What decides the terminals of a place. */
export interface TerminalsOf {
  readonly kind: 'joint' | 'device' | 'rcbo' | 'two-sided' | 'two-earths' | 'plain';
  readonly side: TerminalSide['side'];
}

/**
 * The terminal of a conductor. Socket-outlets and fused units have two earth terminals more often than not: cables take turns
 * at them, so that a ring's two earths are apart (BS 7671 543.7, from memory; where there is one, all go to it).
 *
 * @param turn how many cables of the place come before this one.
 */
export function terminalOf({ kind, side }: TerminalsOf, core: Core, turn: number): TerminalName {
  if (kind === 'device' || kind === 'rcbo') return atBoard(kind, core);
  const earth = kind === 'two-earths' || side !== 'only' ? (turn % 2 === 0 ? 'E1' : 'E2') : 'E';
  if (core === 'earth') return kind === 'joint' || kind === 'plain' ? 'E' : earth;
  const letter = core === 'line' ? 'L' : 'N';
  if (side === 'load') return `${letter}-out`;
  return side === 'supply' || kind === 'two-sided' ? `${letter}-in` : letter;
}

function atBoard(kind: 'device' | 'rcbo', core: Core): TerminalName {
  if (core === 'line') return 'device';
  if (core === 'earth') return 'E-bar';
  return kind === 'rcbo' ? 'device-N' : 'N-bar';
}
