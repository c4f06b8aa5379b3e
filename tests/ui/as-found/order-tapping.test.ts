import { produce } from 'immer';
import type { ReactiveController } from 'lit';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { askPlan } from '../../../ui/controllers/plan-given-up.ts';
import { answerPlan } from '../../../ui/controllers/tool-hold.ts';
import { orderOfLegs } from '../../../ui/elements/as-found/order-of-legs.ts';
import { circuitToOrder, OrderTapping } from '../../../ui/elements/as-found/order-tapping.ts';
import type { JobView } from '../../../ui/job-view.ts';
import type { PlanAsk } from '../../../ui/plan-asks.ts';

const demo = demoJob('saltglass-row');
const [circuit] = demo.circuits;
if (circuit === undefined) throw new Error('no circuit');
const [first = '', second = '', third = ''] = orderOfLegs(demo, circuit);

/** An element in a document of its own, where the order of points is tapped; what it asks and does to the job. */
function tapping(start: Job) {
  const page = new EventTarget();
  vi.stubGlobal('document', page);
  let job = start;
  const asks: (PlanAsk | null)[] = [];
  const controllers: ReactiveController[] = [];
  const host = Object.assign(page, {
    addController: (added: ReactiveController) => void controllers.push(added),
    requestUpdate: () => {},
  });
  page.addEventListener('plan-asked', (event) => {
    asks.push((event as HTMLElementEventMap['plan-asked']).detail.ask);
  });
  page.addEventListener('job-edit', (event) => {
    job = produce(job, (draft) => (event as HTMLElementEventMap['job-edit']).detail.change(draft));
  });
  const order = new OrderTapping(host, () => ({ job }) as JobView);
  for (const one of controllers) one.hostConnected?.();
  const said = (): string => {
    const ask = asks.at(-1);
    return ask?.tool === 'order' ? ask.said : '';
  };
  return { page, order, asks, said, job: () => job };
}

describe('the order of a ring, tapped on the plan', () => {
  beforeEach(() => void vi.unstubAllGlobals());
  afterEach(() => void vi.unstubAllGlobals());

  it('grows by each tap, says what cannot be, takes the last back, and makes the cables', () => {
    const { page, order, asks, said, job } = tapping({ ...demo, legs: [], schemes: [] });
    order.toggle(circuit.id);
    for (const subjectId of [first, second, first]) answerPlan(page, { do: 'pick', subjectId });
    expect(order.sight).toEqual({ circuitId: circuit.id, points: [first, second], isTapped: true });
    expect(said()).toMatch(/is number 1 already$/);
    answerPlan(page, { do: 'pick', subjectId: 'w1-living1' });
    expect(said()).toMatch(/is not there yet$/);
    answerPlan(page, { do: 'take-back' });
    answerPlan(page, { do: 'pick', subjectId: third });
    answerPlan(page, { do: 'done' });
    expect(orderOfLegs(job(), circuit)).toEqual([first, third]);
    expect(asks.at(-1)).toBeNull();
    expect(order.sight).toBeNull();
  });

  it('is one with the list’s: what the list has is gone on from, and what it changes is asked on', () => {
    const { page, order, asks } = tapping(demo);
    order.drafted({ circuitId: circuit.id, points: [first] });
    expect(asks.filter((ask) => ask !== null)).toEqual([]);
    order.toggle(circuit.id);
    answerPlan(page, { do: 'pick', subjectId: second });
    expect(order.sight?.points).toEqual([first, second]);
    order.drafted({ circuitId: circuit.id, points: [second, first] });
    expect(asks.at(-1)).toMatchObject({ tool: 'order', points: [second, first] });
  });

  it('stays in the list when the plan is given up', () => {
    const { page, order } = tapping(demo);
    order.toggle(circuit.id);
    answerPlan(page, { do: 'pick', subjectId: first });
    askPlan(page, null);
    expect(order.sight).toEqual({ circuitId: circuit.id, points: [first], isTapped: false });
  });
});

describe('the circuit that is put in order next', () => {
  it('is the only one, else the only one without cables, else not to be told', () => {
    const other = { ...circuit, id: 'other' };
    expect(circuitToOrder({ circuits: [circuit], legs: demo.legs })?.id).toBe(circuit.id);
    expect(circuitToOrder({ circuits: [circuit, other], legs: demo.legs })?.id).toBe('other');
    expect(circuitToOrder({ circuits: [circuit, other], legs: [] })).toBeNull();
    expect(circuitToOrder({ circuits: [], legs: [] })).toBeNull();
  });
});
