import type { FusedUnit } from '../connections/things.ts';
import type { Facts } from './facts.ts';
import { pointOfNode, wiringOf } from './wiring.ts';

/**
 * Where what is said of a unit comes from: the scheme, where the unit is new or something new is behind it.
 *
 * @param loads `all`: whatever is behind it counts; `fixed`: only what has a fixed load named.
 */
export function originOfUnit(facts: Facts, unit: FusedUnit, loads: 'all' | 'fixed'): 'scheme' | 'found' {
  const { nodes } = wiringOf(facts);
  const isAdded = unit.accessories.some((nodeId) => {
    const node = nodes.get(nodeId);
    return node?.state === 'new' && (loads === 'all' || pointOfNode(facts, node)?.load?.fixed === true);
  });
  return unit.state === 'new' || isAdded ? 'scheme' : 'found';
}
