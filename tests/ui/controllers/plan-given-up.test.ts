import type { ReactiveController } from 'lit';
import { expect, it } from 'vitest';
import { askPlan, whenPlanGivenUp } from '../../../ui/controllers/plan-given-up.ts';

it('tells a form that its place is given up, while the form is shown', () => {
  const page = new EventTarget();
  let controller: ReactiveController | null = null;
  let waits = true;
  const host = {
    addController: (added: ReactiveController) => {
      controller = added;
    },
  };
  whenPlanGivenUp(
    host,
    () => {
      waits = false;
    },
    page,
  );
  const shown = controller as ReactiveController | null;
  shown?.hostConnected?.();
  askPlan(page, { tool: 'place', symbol: 'board', heightMm: 1500 });
  expect(waits).toBe(true);
  askPlan(page, null);
  expect(waits).toBe(false);
  waits = true;
  shown?.hostDisconnected?.();
  askPlan(page, null);
  expect(waits).toBe(true);
});
