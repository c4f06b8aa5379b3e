import { html, svg, type TemplateResult } from 'lit';
import { rowShapes } from '#drawing/plan/points-in-order.ts';
import { type SheetFrame, type SheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { PlanAsks } from '../../plan-asks.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { shapeTemplate } from './shape-template.ts';

/** Whom putting points in order tells. */
interface OrderTells {
  readonly picked: (subjectId: string) => void;
  readonly takeBack: () => void;
  readonly gaveUp: () => void;
}

/** Puts points in order: each is tapped in turn, or come to by keyboard and pressed. */
export class OrderTool implements PlanTool {
  readonly onThings = true;
  readonly #of: () => ToolPlace;
  readonly #asked: () => PlanAsks['order'];
  readonly #tells: OrderTells;

  constructor(of: () => ToolPlace, asked: () => PlanAsks['order'], tells: OrderTells) {
    this.#of = of;
    this.#asked = asked;
    this.#tells = tells;
  }

  get name(): string {
    return 'put the points in order: Page Up and Page Down go from one to the next, Enter puts it last, Backspace takes the last back';
  }

  get telling(): null {
    // The bar below the plan tells it.
    return null;
  }

  get hint(): TemplateResult {
    return html`Tap the points in turn, spurs left out. <span class="by-key">Escape gives up.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    const { points, isRing, circuitId } = this.#asked();
    const { plan, job } = this.#of().worked;
    const boardId = job.circuits.find(({ id }) => id === circuitId)?.board;
    const spot = (at: ReturnType<typeof plan.positionOfPoint.get>): SheetPoint | null =>
      at === undefined || at.storeyId !== this.#of().storeyId ? null : toSheet(frame, at.at);
    const shapes = rowShapes({
      board: boardId === undefined ? null : spot(plan.positionOfBoard.get(boardId)),
      points: points.flatMap((id, index) => {
        const at = spot(plan.positionOfPoint.get(id));
        return at === null ? [] : [{ at, number: index + 1 }];
      }),
      isRing,
    });
    return {
      template: svg`<g class="in-order" aria-hidden="true">${shapes.map(shapeTemplate)}</g>`,
      written: [],
    };
  }

  hovered(): void {}

  tapped(_: unknown, subject: string | null): void {
    if (subject !== null) this.#tells.picked(subject);
  }

  keyed(key: string): boolean {
    if (key !== 'Backspace') return false;
    this.#tells.takeBack();
    return true;
  }

  giveUp(): void {
    this.#tells.gaveUp();
  }
}
