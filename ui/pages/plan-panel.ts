import { html, nothing, type TemplateResult } from 'lit';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { JobRoute } from '../controllers/router.ts';
import { markedStoreys } from '../elements/plan/marked-storeys.ts';
import '../elements/plan/plan-view.ts';
import '../elements/plan/tool-bar.ts';
import { shownProof } from '../elements/proof/circuit-of.ts';
import '../elements/proof/proof-view.ts';
import '../elements/proof/view-switch.ts';
import '../elements/storey-switch.ts';
import '../elements/ways/tried-line.ts';
import type { JobView } from '../job-view.ts';
import { movablePoints } from '../movable-points.ts';
import type { PlanAsk } from '../plan-asks.ts';

/** What the plan's part of a job's page is drawn from. */
interface PlanPanel {
  readonly view: JobView;
  readonly shown: Pick<SchemeEstimate, 'worked' | 'findings' | 'proof'>;
  readonly route: Pick<JobRoute, 'view' | 'circuit'>;
  /** What a step asks of the plan; null for nothing. */
  readonly asked: PlanAsk | null;
  /** The last change to the job; null for none. */
  readonly undoLabel: string | null;
  readonly phone: boolean;
}

const none: ReadonlySet<string> = new Set();

/** A way that is being drawn takes the plan's taps. */
const wayAsk = ({ drawing }: JobView): PlanAsk | null =>
  drawing?.isDrawing ? { tool: 'way', drawing } : null;

/** The plan, or a picture of a circuit in its place or beneath it, with the switches for both. */
export function planPanel({ view, shown, route, asked, undoLabel, phone }: PlanPanel): TemplateResult {
  const { worked, findings, proof } = shown;
  // While a way is drawn the hand puts corners down, and moves nothing.
  const ask = asked ?? wayAsk(view);
  const movable = view.drawing?.isDrawing ? none : movablePoints(view);
  // A point that may be dragged stays in sight, so that the picture follows the hand.
  const withPlan = route.view === 'plan' || (movable.size > 0 && !phone);
  const storeys = html`<storey-switch
    .storeys=${view.job.storeys}
    .storeyId=${view.storeyId}
    .marked=${markedStoreys(worked, view)}
  ></storey-switch>`;
  const plan = html`<plan-view
    .worked=${worked}
    .storeyId=${view.storeyId}
    .findings=${findings}
    .chosen=${view.chosen}
    .lit=${view.lit}
    .movable=${movable}
    .moved=${view.moved}
    .asked=${ask}
    .large=${phone}
    .drawing=${view.drawing}
  ></plan-view>`;
  const picture = html`<proof-view
    class=${withPlan ? 'half' : ''}
    .worked=${worked}
    .proofs=${proof}
    .shown=${route.view}
    .circuitId=${route.circuit}
    .chosen=${view.chosen}
    .lit=${view.lit}
  ></proof-view>`;
  return html`<div class="controls">
      ${withPlan ? storeys : nothing}
      <view-switch .shown=${route.view} .ring=${shownProof(proof, route.circuit)?.shape === 'ring'}></view-switch>
      ${view.ways.tried === null ? nothing : html`<tried-line .view=${view}></tried-line>`}
    </div>
    ${withPlan ? plan : nothing}${ask === null || ask.tool === 'way' ? nothing : html`<tool-bar .ask=${ask} .undoLabel=${undoLabel}></tool-bar>`}${route.view === 'plan' ? nothing : picture}`;
}
