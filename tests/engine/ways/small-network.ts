import type { Network, NetworkEdge, NetworkNode } from '#engine/circuit/network.ts';

/** A node for a test: a point's terminals of the same id, found. */
export function node(id: string, more: Partial<NetworkNode> = {}): NetworkNode {
  return {
    id,
    kind: 'terminals',
    pointId: id,
    circuitId: null,
    connectionId: null,
    place: null,
    inLeg: null,
    joint: null,
    state: 'found',
    ...more,
  };
}

/** A node that a connection brings along. */
export function broughtNode(id: string, connectionId: string, more: Partial<NetworkNode> = {}): NetworkNode {
  return node(id, { pointId: null, connectionId, state: 'new', ...more });
}

/** A new cable for a test, of the connection before the slash of its id. */
export function newCable(id: string, from: string, to: string, more: Partial<NetworkEdge> = {}): NetworkEdge {
  return {
    id,
    kind: 'cable',
    from,
    to,
    originEnd: null,
    legId: null,
    partMm: null,
    connectionId: id.split('/')[0] ?? null,
    cable: null,
    lengthMm: null,
    fuseA: null,
    state: 'new',
    ...more,
  };
}

/** A leg's cable as found. */
export function legCable(
  legId: string,
  from: string,
  to: string,
  more: Partial<NetworkEdge> = {},
): NetworkEdge {
  return newCable(legId, from, to, { legId, connectionId: null, state: 'found', ...more });
}

/** A network of these nodes and edges, with nothing else to say. */
export function networkOf(nodes: NetworkNode[], edges: NetworkEdge[], more: Partial<Network> = {}): Network {
  return { nodes, edges, circuits: [], removed: [], problems: [], unwired: new Map(), ...more };
}
