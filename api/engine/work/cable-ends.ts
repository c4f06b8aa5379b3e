import type { NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import { sleevedEnds } from '../connections/sleeved-ends.ts';
import type { Worked } from '../connections/worked.ts';
import type { CableEnd, CableEndState, Conductor, TerminalName } from './connection-place.ts';
import { type Core, type CoreColours, coloursOfFound, coloursOfNew, cores } from './core-colour.ts';
import type { PlaceNodes } from './place-nodes.ts';
import type { References } from './references.ts';

/** An end of a cable at a node, before its conductors are told. */
interface BareEnd {
  readonly edge: NetworkEdge | null;
  readonly node: NetworkNode;
  readonly state: CableEndState;
}

/** The ends of a place: those that are there once the work is done, by node, and those that go. */
export interface EndsOfPlace {
  readonly byNode: ReadonlyMap<NodeId, readonly BareEnd[]>;
  readonly gone: readonly BareEnd[];
}

const stateOrder: readonly CableEndState[] = ['found', 'cut-end', 'new', 'not-recorded'];

/**
 * The ends of cables at a place, as proposed and as found. A leg that ended here before and does so still is `found`; one whose
 * cut end comes here is a `cut-end`; what ended here and does not any more is gone. What the survey counted and no leg tells
 * of is there too, less what the scheme lifts of it.
 */
export function endsOfPlace(worked: Worked, place: PlaceNodes, references: References): EndsOfPlace {
  const left = new Map<string, BareEnd[]>();
  for (const end of place.before.flatMap((node) => edgesAt(worked.found.edges, node)))
    left.set(end.edge?.legId ?? '', [...(left.get(end.edge?.legId ?? '') ?? []), end]);
  const byNode = new Map(
    place.now.map((node) => {
      const recorded = edgesAt(worked.proposed.edges, node).map(
        (end): BareEnd => ({ ...end, state: stateOf(end, left) }),
      );
      const untold = untoldAt(worked, node, recorded.length);
      return [node.id, [...recorded, ...untold].toSorted(inEndOrder(references))] as const;
    }),
  );
  const lifted = (worked.proposed.lifted ?? []).flatMap(({ nodeId }) => {
    const node = place.now.find(({ id }) => id === nodeId);
    return node === undefined ? [] : [{ edge: null, node, state: 'not-recorded' as const }];
  });
  return { byNode, gone: [...[...left.values()].flat(), ...lifted].toSorted(inEndOrder(references)) };
}

/** The cables that end at a node; one that begins and ends there twice. */
const edgesAt = (edges: readonly NetworkEdge[], node: NetworkNode): readonly BareEnd[] =>
  edges
    .filter(({ kind }) => kind === 'cable')
    .flatMap((edge) =>
      [edge.from, edge.to]
        .filter((end) => end === node.id)
        .map((): BareEnd => ({ edge, node, state: edge.state })),
    );

/** Takes an end that was here before off those that are left, where there is one of the same leg. */
function stateOf({ edge, node }: BareEnd, left: Map<string, BareEnd[]>): CableEndState {
  if (edge === null || edge.state === 'new') return 'new';
  // The kept end of an old cable that no leg records runs from where it stays as it was.
  if (edge.legId === null) return edge.from === node.id ? 'found' : 'cut-end';
  const [here, ...others] = left.get(edge.legId) ?? [];
  if (here === undefined) return 'cut-end';
  left.set(edge.legId, others);
  return 'found';
}

function untoldAt({ things }: Worked, node: NetworkNode, recorded: number): readonly BareEnd[] {
  const fill = things.terminals.find(({ nodeId }) => nodeId === node.id);
  const count = Math.max(0, (fill?.cables ?? 0) - recorded);
  return Array.from({ length: count }, () => ({ edge: null, node, state: 'not-recorded' as const }));
}

const inEndOrder =
  (references: References) =>
  (a: BareEnd, b: BareEnd): number => {
    const byState = stateOrder.indexOf(a.state) - stateOrder.indexOf(b.state);
    if (byState !== 0 || a.edge === null || b.edge === null) return byState;
    const keyOf = (edge: NetworkEdge): string =>
      `${edge.originEnd ?? ''} ${inFigures(references.cable(edge.id))}`;
    const [one, other] = [keyOf(a.edge), keyOf(b.edge)];
    return one < other ? -1 : one === other ? 0 : 1;
  };

/** What marks are put in order by: K2 before K10. */
export const inFigures = (mark: string): string => mark.replace(/\d+/g, (digits) => digits.padStart(6, '0'));

/** How the ends of a scheme are told: their names, colours and sleeves. */
export type EndTeller = (end: BareEnd, terminalAt: (core: Core) => TerminalName) => CableEnd;

/** Tells the ends of a scheme; what is put over bare earths is what the kit counts. */
export function endTeller(worked: Worked, references: References): EndTeller {
  const sleeved = new Set(sleevedEnds(worked).map(({ nodeId, edgeId }) => `${nodeId} ${edgeId}`));
  return ({ edge, node, state }, terminalAt) => {
    const colours = coloursOf(worked, { edge, node, state });
    const isPutOn = edge !== null && sleeved.has(`${node.id} ${edge.id}`);
    const other = edge === null ? null : edge.from === node.id ? edge.to : edge.from;
    return {
      edgeId: edge?.id ?? null,
      mark: edge === null ? null : references.cable(edge.id),
      state,
      nodeId: node.id,
      ringEnd: node.kind === 'origin' ? (edge?.originEnd ?? null) : null,
      towards: other === null ? null : { nodeId: other, mark: references.place(other) },
      lineMm2: edge?.cable?.lineMm2 ?? null,
      cpcMm2: edge?.cable?.cpcMm2 ?? null,
      conductors: cores.map((core) =>
        conductor(core, colours, { sleeve: sleeveOf(colours, state, isPutOn), terminal: terminalAt(core) }),
      ),
    };
  };
}

function conductor(
  core: Core,
  colours: CoreColours,
  { sleeve, terminal }: Pick<Conductor, 'sleeve' | 'terminal'>,
): Conductor {
  const foundColour = colours[core];
  if (core !== 'earth') return { core, foundColour, afterColour: foundColour, sleeve: null, terminal };
  // Whatever it is as found, an earth is green-yellow where it is seen.
  return { core, foundColour, afterColour: 'green-yellow', sleeve, terminal };
}

function sleeveOf(colours: CoreColours, state: CableEndState, isPutOn: boolean): Conductor['sleeve'] {
  if (isPutOn) return 'put-on';
  return state === 'new' || colours.earth === 'green-yellow' ? null : 'look';
}

function coloursOf({ job, proposed, found }: Worked, { edge, node, state }: BareEnd): CoreColours {
  if (state === 'new' && edge?.cable) return coloursOfNew(edge.cable);
  const point = job.points.find(({ id }) => id === node.pointId);
  // What takes a point's place was not there to be looked at.
  const seen = point?.replaces === undefined ? point : job.points.find(({ id }) => id === point.replaces);
  const leg = job.legs.find(({ id }) => id === edge?.legId);
  const circuitId = leg?.circuit ?? point?.circuit ?? node.circuitId;
  const circuit = [...proposed.circuits, ...found.circuits].find(({ id }) => id === circuitId)?.circuit;
  return coloursOfFound(edge?.cable ?? null, seen, circuit ?? null);
}
