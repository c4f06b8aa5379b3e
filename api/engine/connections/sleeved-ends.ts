import type { NetworkEdge, NodeId } from '../circuit/network.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import type { Worked } from './worked.ts';

/** An end of a cable whose bare protective conductor is sleeved in this job. */
export interface SleevedEnd {
  readonly nodeId: NodeId;
  /** The cable's edge; null for an end at a joint of a cable that no edge stands for. */
  readonly edgeId: string | null;
  readonly cpcMm2: number;
  /** What asks for it: the new cable, the joint, the point. */
  readonly cause: string;
}

/**
 * Where green-yellow sleeving goes on: both ends of every new flat cable, every end of an old one at a new joint, and cut
 * ends of old ones that are brought into new points. An old point's own ends have their sleeves. New cables first, then
 * joints, then points, each in the order of their stage. Source: BS 7671 514.4.2 by public sources.
 */
export function sleevedEnds(worked: Worked): readonly SleevedEnd[] {
  return [...newEnds(worked), ...endsAtNewJoints(worked), ...oldEndsAtNewPoints(worked)];
}

const newEnds = ({ runs }: Worked): readonly SleevedEnd[] =>
  runs
    .filter(({ cable }) => cable.type.startsWith('flat-') && cable.cpcMm2 > 0)
    .flatMap(({ id, cable: { cpcMm2 }, from, to }) =>
      [from, to].map(({ nodeId }) => ({ nodeId, edgeId: id, cpcMm2, cause: id })),
    );

function endsAtNewJoints({ runs, things, proposed }: Worked): readonly SleevedEnd[] {
  const newIds = new Set(runs.map(({ id }) => id));
  return things.joints
    .filter(({ state }) => state === 'new')
    .flatMap((joint) => {
      const meeting = runs.filter(({ from, to }) => from.nodeId === joint.id || to.nodeId === joint.id);
      const old = endsAt(proposed.edges, joint.id).filter(({ id }) => !newIds.has(id));
      const count = Math.max(0, joint.cables - meeting.length);
      const cpcMm2 = meeting[0]?.cable.cpcMm2 ?? USUAL_CABLE.cpcMm2;
      return Array.from({ length: count }, (_, i) => ({
        nodeId: joint.id,
        edgeId: old[i]?.id ?? null,
        cpcMm2,
        cause: joint.id,
      }));
    });
}

/** The cables at a node, one that begins and ends there twice. */
const endsAt = (edges: readonly NetworkEdge[], nodeId: NodeId): readonly NetworkEdge[] =>
  edges
    .filter(({ kind }) => kind === 'cable')
    .flatMap((edge) => [edge.from, edge.to].flatMap((end) => (end === nodeId ? [edge] : [])));

function oldEndsAtNewPoints({ proposed, plan }: Worked): readonly SleevedEnd[] {
  const newPoints = new Map(
    proposed.nodes.flatMap(({ id, kind, pointId, state }) =>
      kind !== 'joint' &&
      state === 'new' &&
      pointId !== null &&
      plan.pointById.get(pointId)?.replaces === undefined
        ? [[id, pointId] as const]
        : [],
    ),
  );
  return proposed.edges
    .filter(({ kind, legId }) => kind === 'cable' && legId !== null)
    .flatMap(({ id, from, to, cable }) =>
      [from, to].flatMap((nodeId) => {
        const cause = newPoints.get(nodeId);
        const cpcMm2 = cable?.cpcMm2 ?? USUAL_CABLE.cpcMm2;
        return cause === undefined || cpcMm2 === 0 ? [] : [{ nodeId, edgeId: id, cpcMm2, cause }];
      }),
    );
}
