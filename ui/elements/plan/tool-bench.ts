import { PlacingFocus } from './placing-focus.ts';
import type { PlanTool } from './plan-tool.ts';
import { rehearse, wallRehearsal } from './rehearsal.ts';
import { type Bench, makeTool } from './tool-makers.ts';

/** Has the tool in hand that is asked for; `tool-makers.ts` makes each. */
export class ToolBench {
  #tool: PlanTool | null = null;
  #name: string | null = null;
  #followed: string | null = null;
  #leaveOff: () => void = () => {};
  readonly #focus = new PlacingFocus();
  readonly #bench: Bench;

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  get tool(): PlanTool | null {
    return this.#tool;
  }

  /** Takes up the tool that is asked for, and puts away the one that is not. */
  take(): void {
    const ask = this.#bench.asked();
    const name = ask?.tool ?? null;
    if (name === this.#name) return;
    this.#name = name;
    this.#tool = ask === null ? null : makeTool(this.#bench, ask);
    this.#leaveOff();
    if (name === 'reshape')
      this.#leaveOff = rehearse(
        wallRehearsal(this.#bench.place, this.#bench.frame),
        () => this.#tool?.grips?.aside() != null,
      );
  }

  /** The plan goes out of sight. */
  stop(): void {
    this.#leaveOff();
  }

  /** The focus goes to the plan with a tool that was taken up by keyboard, and back when it is put away. */
  follow(plan: SVGElement | null): void {
    if (this.#name === this.#followed) return;
    this.#followed = this.#name;
    if (!this.#focus.follow(this.#tool !== null, plan)) return;
    this.#tool?.reachedByKeys?.();
    this.#bench.moved('');
  }
}
