import type { Worked } from '#engine/connections/worked.ts';
import { connectedPoints, labelsOf } from '../label-of.ts';

/** So many places are named; of more it is said how many. */
const MOST_NAMED = 6;

/**
 * What things are for, in few words: the points that a connection joins on stand for its cables and joints.
 *
 * @returns a function from ids of causes to words such as "W1, W2 and R8"; empty words for no cause.
 */
export function whatFor(worked: Worked): (causes: readonly string[]) => string {
  const labelOf = labelsOf(worked);
  const pointsOf = new Map(
    (worked.scheme?.connections ?? []).map((connection) => [
      connection.id,
      connectedPoints(connection).map(labelOf),
    ]),
  );
  return (causes) => {
    const labels = causes.flatMap((cause) => pointsOf.get(cause.split('/')[0] ?? '') ?? [labelOf(cause)]);
    return inRow([...new Set(labels)].toSorted(byNumber));
  };
}

/** Labels of the same letters go by their number: W2 before W10. */
function byNumber(a: string, b: string): number {
  const [[wordA, numberA], [wordB, numberB]] = [parted(a), parted(b)];
  if (wordA !== wordB) return wordA < wordB ? -1 : 1;
  return numberA - numberB || (a < b ? -1 : Number(a > b));
}

function parted(label: string): readonly [string, number] {
  const found = /^(\D*)(\d+)$/.exec(label);
  return found === null ? [label, 0] : [found[1] ?? '', Number(found[2])];
}

function inRow(labels: readonly string[]): string {
  if (labels.length > MOST_NAMED) {
    const named = labels.slice(0, MOST_NAMED - 1);
    return `${named.join(', ')} and ${labels.length - named.length} more`;
  }
  return labels.length < 2 ? (labels[0] ?? '') : `${labels.slice(0, -1).join(', ')} and ${labels.at(-1)}`;
}
