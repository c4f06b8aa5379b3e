/** The node at the load side of a fused unit, by the unit's supply side. */
export const loadNodeOf = (unitId: string): string => `${unitId}/load`;

/** The unit of a node that is a load side, which people know as one thing; any other node as it is. */
export const unitOfLoadSide = (nodeId: string): string => nodeId.replace(/\/load$/, '');
