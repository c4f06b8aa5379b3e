import type { Connection, Remedy } from '#model/scheme.ts';
import { remembered } from '../../plan/remembered.ts';
import type { House } from '../work-scheme.ts';

/** What hangs together in a house as found, by cables, by what the survey says of a point, or by one taking another's place. */
interface Pieces {
  /** The piece of a circuit, a node, a point or a leg; absent where no circuit hangs together with it. */
  readonly pieceOf: ReadonlyMap<string, number>;
  readonly pieceOfLeg: ReadonlyMap<string, number>;
  /** Where points go, come or take others' places: what that takes is counted with every scheme. */
  readonly always: ReadonlySet<number>;
  readonly parts: Map<string, House>;
}

/**
 * The part of a house that connections and remedies can have to do with: the circuits that they name with all that hangs
 * together with these. Whatever they cause there they cause in the whole house, since wiring is shared out, shaped and
 * built into things piece by piece; no cable of its own leads from one piece into another. The plan stays the whole one,
 * and wanted points are in every part.
 *
 * @returns the house itself where a remedy names nothing that is wired.
 */
export function housePart(
  house: House,
  connections: readonly Connection[],
  remedies: readonly Remedy[],
): House {
  const { pieceOf, pieceOfLeg, always, parts } = piecesOf(house);
  if (remedies.some(({ at }) => !pieceOf.has(at ?? ''))) return house;
  const own = new Set(always);
  for (const name of [...namesIn(connections), ...remedies.flatMap(({ at }) => at ?? [])])
    for (const piece of [pieceOf.get(name), pieceOfLeg.get(name)]) if (piece !== undefined) own.add(piece);
  const key = [...own].sort((a, b) => a - b).join(' ');
  const part = parts.get(key) ?? partOf(house, own);
  parts.set(key, part);
  return part;
}

/** Every word in a value: names among them, and others that name nothing. */
function namesIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(namesIn) : [];
}

const piecesOf = remembered(({ job, found }: House): Pieces => {
  const groups = new Groups();
  for (const { id } of job.circuits) groups.add(id);
  for (const { id, pointId } of found.nodes) if (pointId !== null) groups.join(id, pointId);
  for (const { from, to } of found.edges) groups.join(from, to);
  for (const { id, circuit, replaces } of job.points) {
    groups.add(id);
    if (circuit !== undefined) groups.join(id, circuit);
    if (replaces !== undefined) groups.join(id, replaces);
  }
  const circuitOfLeg = new Map(job.legs.map(({ id, circuit }) => [id, circuit]));
  for (const { legId, from } of found.edges) {
    const circuit = circuitOfLeg.get(legId ?? '');
    if (circuit !== undefined) groups.join(from, circuit);
  }
  const changing = job.points.filter(
    ({ status, replaces }) => status === 'removed' || status === 'replaced' || replaces !== undefined,
  );
  return {
    pieceOf: groups.numbers(),
    pieceOfLeg: new Map(job.legs.map(({ id, circuit }) => [id, groups.of(circuit)])),
    always: new Set(changing.map(({ id }) => groups.of(id))),
    parts: new Map(),
  };
});

/** Names that are joined to one another, two by two. */
class Groups {
  readonly #above = new Map<string, string>();
  readonly #numbers = new Map<string, number>();

  add(name: string): void {
    if (!this.#above.has(name)) this.#above.set(name, name);
  }

  join(one: string, other: string): void {
    this.add(one);
    this.add(other);
    this.#above.set(this.#topOf(one), this.#topOf(other));
  }

  of(name: string): number {
    this.add(name);
    const top = this.#topOf(name);
    const number = this.#numbers.get(top) ?? this.#numbers.size;
    this.#numbers.set(top, number);
    return number;
  }

  numbers(): ReadonlyMap<string, number> {
    return new Map([...this.#above.keys()].map((name) => [name, this.of(name)]));
  }

  #topOf(name: string): string {
    let top = name;
    for (let above = this.#above.get(top) ?? top; above !== top; above = this.#above.get(top) ?? top) {
      this.#above.set(top, this.#above.get(above) ?? above);
      top = above;
    }
    return top;
  }
}

function partOf(house: House, own: ReadonlySet<number>): House {
  const { job, found, foundShapes } = house;
  const { pieceOf, pieceOfLeg } = piecesOf(house);
  const isIn = (name: string): boolean => own.has(pieceOf.get(name) ?? -1);
  const ofCircuit = <V>(all: ReadonlyMap<string, V>): ReadonlyMap<string, V> =>
    new Map([...all].filter(([circuitId]) => isIn(circuitId)));
  return {
    ...house,
    job: {
      ...job,
      circuits: job.circuits.filter(({ id }) => isIn(id)),
      points: job.points.filter(({ id, status }) => status === 'wanted' || isIn(id)),
      legs: job.legs.filter(({ id }) => own.has(pieceOfLeg.get(id) ?? -1)),
    },
    found: {
      ...found,
      nodes: found.nodes.filter(({ id }) => isIn(id)),
      edges: found.edges.filter(({ from }) => isIn(from)),
      circuits: found.circuits.filter(({ id }) => isIn(id)),
      unwired: ofCircuit(found.unwired),
    },
    foundShapes: ofCircuit(foundShapes),
  };
}
