import { confidenceWords } from '#drawing/proof/proof-words.ts';
import { cautions, editionNote } from '#engine/cautions.ts';
import type { InferredCircuit, InferredPoint } from '#engine/proof/readings/inferred-circuit.ts';
import type { Job } from '#model/job.ts';

const ohm = (value: number | null): string => (value === null ? 'not read' : `${value.toFixed(2)} Ω`);

/** What readings say, for people: a block a circuit. */
export function readingsTable(job: Job, circuits: readonly InferredCircuit[]): string {
  if (circuits.length === 0)
    return `${job.title}: no loop was read before the work. Read the ring end to end, and linked at every point.\n`;
  return [...circuits.map((circuit) => blockOf(job, circuit)), editionNote, ...cautions.slice(0, 2), ''].join(
    '\n',
  );
}

function blockOf(job: Job, circuit: InferredCircuit): string {
  const { loop, order, points, legs, contradictions, causes, next, undecidable } = circuit;
  const labels = new Map(job.points.map(({ id, label }) => [id, label]));
  const labelOf = (id: string): string => labels.get(id) ?? id;
  const name = job.circuits.find(({ id }) => id === circuit.circuit)?.name ?? circuit.circuit;
  const length =
    loop.lengthMm === null
      ? 'not known'
      : `${(loop.lengthMm / 1000).toFixed(1)} m ± ${((loop.plusMinusMm ?? 0) / 1000).toFixed(1)} m`;
  return [
    `${name}: ${takenWords(circuit)}`,
    `  Loop ${length}; r1 ${ohm(loop.r1Ohm)}, rn ${ohm(loop.rnOhm)}, r2 ${ohm(loop.r2Ohm)}${loop.cpc === null ? '' : `. ${loop.cpc.words}`}`,
    `  ${order.answer === 'cannot-say' ? 'Order: cannot say.' : `Order (${confidenceWords(order.confidence)}): ${order.points.map(labelOf).join(' – ')}.`} ${order.words}`,
    ...points.map(
      (point) => `  ${labelOf(point.point).padEnd(6)} ${sureOf(point).padStart(5)}  ${point.words}`,
    ),
    ...legs.map(({ words }) => `  ${words}`),
    ...listed('Contradicts what is recorded', contradictions),
    ...listed('Usual causes', causes),
    ...listed('Next', next),
    ...listed('Cannot be told by these readings', undecidable),
    '',
  ].join('\n');
}

const sureOf = ({ role, confidence }: InferredPoint): string =>
  role === 'cannot-say' ? '' : confidenceWords(confidence);

const listed = (title: string, items: readonly { readonly words: string }[]): readonly string[] =>
  items.length === 0 ? [] : [`  ${title}:`, ...items.map(({ words }) => `    ${words}`)];

function takenWords({ taken }: InferredCircuit): string {
  const parts = [
    ...(taken.endToEnd.length === 0 ? [] : [`${taken.endToEnd.join(', ')} end to end`]),
    ...taken.linked.map(({ loop, fromA, fromB }) => `${loop} linked at ${fromA} from A, ${fromB} from B`),
    ...taken.crossed.map(({ loop, points }) => `${loop} crossed at ${points}`),
    ...(taken.plates === 0 ? [] : [`cables counted at ${taken.plates}`]),
    ...(taken.leftOut.length === 0 ? [] : [`${taken.leftOut.length} left out`]),
  ];
  return parts.join('; ');
}
