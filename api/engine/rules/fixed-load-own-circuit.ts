import type { Point } from '#model/installation.ts';
import type { NodePlace } from '../circuit/shape.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf, pointOfNode, touchedShapes, wiringOf } from './wiring.ts';

/** Up to this a fixed load may share a socket circuit by present guidance, W. */
const SHARED_W = 2000;

/** Older books let fixed appliances up to this share a ring, W. */
const OLDER_SHARED_W = 3000;

/** A cooker, oven or hob above this has its own circuit, W. */
const COOKER_W = 2000;

/** Storage water heaters above this have their own circuit. */
const HEATER_LITRES = 15;

type Message = 'within' | 'over' | 'farOver' | 'cooker' | 'waterHeater' | 'waterHeaterSize';

/** Large fixed loads want a circuit of their own. */
export const fixedLoadOwnCircuit = rule<Message>({
  id: 'FL1',
  title: 'Circuits of large fixed loads',
  source: 'IET On-Site Guide Appendix H and BS 7671 Appendix 15 (guidance)',
  messages: {
    within: '{name} draws {actual} W and may share a socket circuit, {limit} W by guidance.',
    over: '{name} draws {actual} W on a circuit that it shares. Sources differ: present guidance prefers a circuit of its own above {limit} W, older books allowed 3000 W; the stricter is followed.',
    farOver:
      '{name} draws {actual} W on a circuit that it shares; guidance has {limit} W, and 3000 W at the most.',
    cooker: '{name} is a cooking appliance of {actual} W; above {limit} W it wants a circuit of its own.',
    waterHeater:
      '{name} heats {actual} litres; above {limit} litres a water heater wants a circuit of its own.',
    waterHeaterSize:
      '{name} is a water heater of unknown size; above {limit} litres it wants a circuit of its own.',
  },
  remedies: {
    over: 'A radial of its own from the board, or a recorded decision.',
    farOver: 'A radial of its own from the board.',
    cooker: 'A cooker circuit of its own from the board.',
    waterHeater: 'A radial of its own from the board.',
    waterHeaterSize: 'Look at its plate, and name the litres.',
  },
  couldFail: false,
  check: (facts) => touchedShapes(facts).flatMap(({ places }) => ofCircuit(facts, places)),
});

function ofCircuit(facts: Facts, places: readonly NodePlace[]): readonly CheckResult<Message>[] {
  const { nodes } = wiringOf(facts);
  const served = new Map<string, { point: Point; nodeId: string }>();
  for (const { nodeId, role } of places) {
    const point = pointOfNode(facts, nodes.get(nodeId));
    // A unit has two nodes and one load.
    if (point && role !== 'unreached' && !served.has(point.id)) served.set(point.id, { point, nodeId });
  }
  const outlets = [...served.values()].filter(({ point }) => point.kind.startsWith('socket-')).length;
  const loads = [...served.values()].filter(({ point }) => point.load?.fixed);
  const isShared = outlets > 0 || loads.length > 1;
  return isShared ? loads.map(({ point, nodeId }) => judged(facts, point, nodeId)) : [];
}

function judged(facts: Facts, point: Point, nodeId: string): CheckResult<Message> {
  const { nodes } = wiringOf(facts);
  const watts = point.load?.watts ?? 0;
  const use = point.load?.use ?? '';
  const name = nameOf(facts, nodeId);
  const head = {
    subjectId: point.id,
    origin: nodes.get(nodeId)?.state === 'new' ? ('scheme' as const) : ('found' as const),
  };
  const figures = (actual: number, limit: number, unit: string) => ({
    actual,
    limit,
    unit,
    values: { name, actual, limit },
  });
  if (/cooker|\bhob\b|\boven\b/i.test(use) && watts > COOKER_W)
    return { ...head, ...figures(watts, COOKER_W, 'W'), outcome: 'decide', messageId: 'cooker' };
  if (/water heater|immersion/i.test(use)) {
    const litres = Number(/(\d+(?:\.\d+)?)\s*(?:l|litres?)\b/i.exec(use)?.[1] ?? Number.NaN);
    if (Number.isNaN(litres)) {
      const values = { name, limit: HEATER_LITRES };
      return {
        ...head,
        limit: HEATER_LITRES,
        unit: 'l',
        values,
        outcome: 'not-proven',
        messageId: 'waterHeaterSize',
      };
    }
    if (litres > HEATER_LITRES)
      return { ...head, ...figures(litres, HEATER_LITRES, 'l'), outcome: 'decide', messageId: 'waterHeater' };
  }
  const limit = facts.limits.fixedLoadW ?? SHARED_W;
  if (watts <= limit)
    return { ...head, ...figures(watts, limit, 'W'), outcome: 'passes', messageId: 'within' };
  const messageId = watts > OLDER_SHARED_W ? 'farOver' : 'over';
  return { ...head, ...figures(watts, limit, 'W'), outcome: 'decide', messageId };
}
