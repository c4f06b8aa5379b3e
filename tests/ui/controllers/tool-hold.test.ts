import type { ReactiveController } from 'lit';
import { describe, expect, it } from 'vitest';
import { askPlan } from '../../../ui/controllers/plan-given-up.ts';
import { answerPlan, ToolHold } from '../../../ui/controllers/tool-hold.ts';
import { send } from '../../../ui/job-events.ts';
import type { AskOf } from '../../../ui/plan-asks.ts';

const ask: AskOf<'place'> = { tool: 'place', symbol: 'board', heightMm: 1400 };
const place = { storey: 'ground', at: [0, 0], heightMm: 1400 } as const;

/** An element that holds the tool for places, on a page that hears all events; its controllers are connected. */
function held() {
  const controllers: ReactiveController[] = [];
  const page = Object.assign(new EventTarget(), {
    addController: (added: ReactiveController) => void controllers.push(added),
    requestUpdate: () => {},
  });
  const heard: string[] = [];
  const hears = {
    placed: () => void heard.push('placed'),
    answered: () => void heard.push('answered'),
    ended: () => void heard.push('ended'),
  };
  const hold = new ToolHold(page, 'place', hears, page);
  for (const one of controllers) one.hostConnected?.();
  const leave = (): void => {
    for (const one of controllers) one.hostDisconnected?.();
  };
  return { page, hold, heard, leave };
}

describe('an element’s hold on a tool', () => {
  it('hears what comes of the tool only while it is in hand', () => {
    const { page, hold, heard } = held();
    send(page, 'place-tapped', { place: { ...place, at: [0, 0] } });
    hold.ask(ask);
    expect(hold.isHeld).toBe(true);
    send(page, 'place-tapped', { place: { ...place, at: [0, 0] } });
    answerPlan(page, { do: 'done' });
    hold.letGo();
    answerPlan(page, { do: 'done' });
    expect(heard).toEqual(['placed', 'answered', 'ended']);
    expect(hold.isHeld).toBe(false);
  });

  it('ends once when it is given up, when another tool is asked for, and when the element goes', () => {
    for (const end of ['given up', 'another', 'gone'] as const) {
      const { page, hold, heard, leave } = held();
      hold.ask(ask);
      hold.ask({ ...ask, heightMm: 1500 });
      if (end === 'given up') askPlan(page, null);
      if (end === 'another') askPlan(page, { tool: 'joint', legId: 'l', symbol: 'joint', heightMm: 0 });
      leave();
      expect(heard, end).toEqual(['ended']);
    }
  });
});
