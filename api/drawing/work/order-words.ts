import { capital } from '#engine/quotation/said.ts';
import type { CircuitOrder } from '#engine/work/circuit-order.ts';

/** By what a circuit's order is known. */
export const evidenceWords: Readonly<Record<CircuitOrder['evidence'], string>> = {
  proved: 'proved by readings',
  recorded: 'as recorded, not proved',
  claimed: 'by its label alone',
  none: 'nobody has said how it runs',
};

/** "Ring", "Broken ring"; that its shape is not known. */
export const shapeWords = ({ shape }: CircuitOrder): string =>
  shape === 'unknown' ? 'Its shape is not known' : capital(shape.replace('-', ' '));
