import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type SheetName, sheetNames } from '#drawing/plan/sheet-layout.ts';
import { storeysToDraw } from '#drawing/plan/storeys-to-draw.ts';
import { nextRevision } from '#engine/quotation/standing.ts';
import { stateTag } from '#engine/state-tag.ts';
import { cautionsOf } from '#engine/work/cautions-of.ts';
import { send } from '../../job-events.ts';
import type { JobView, PaperPart } from '../../job-view.ts';
import type { QuotationsView } from '../../quotations/quotations-view.ts';
import { dayWords } from '../../written.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import './actual-work.ts';
import './built-work.ts';
import './quotation/issued-quotations.ts';
import './danger-warning.ts';
import { demoWarnings } from './demo-warning.ts';
import './papers-switch.ts';
import './quotation/quotation-part.ts';
import './work/connection-sheet.ts';
import './work/floor-sheet.ts';
import './work/task-sheet.ts';
import './work/test-sheet.ts';

/** A file that can be had, and what it is for. */
interface Paper {
  readonly name: string;
  readonly file: string;
  readonly what: string;
  /** True where there is one a storey. */
  readonly eachStorey?: boolean;
  /** True where it can be had on one paper throughout. */
  readonly onSheets?: boolean;
  /** False where it can be had without a scheme. */
  readonly needsScheme: boolean;
  /** True for what can be made on the device, too. */
  readonly isArchive?: boolean;
}

const papers: readonly Paper[] = [
  {
    name: 'The pack',
    file: 'papers.pdf',
    what: 'One PDF to work from: what to see to first, tasks in order, circuits and connections, cuts, joists and boards, the test sheet, the record for the certificate, and the wiring plans on their own sheets at the end.',
    needsScheme: true,
  },
  {
    name: 'Everything',
    file: 'papers.zip',
    what: 'One archive: the pack, each paper by itself, workbook, quotation, lists, drawings, the job file and its photos.',
    needsScheme: true,
  },
  {
    name: 'Bill of materials and price',
    file: 'bill-of-materials.xlsx',
    what: 'Workbook: summary, bill, shopping list, cut list, labour, cable schedule, points, checks, comparison. Its figures recalculate.',
    needsScheme: true,
  },
  {
    name: 'Bill as CSV',
    file: 'bill-of-materials.csv',
    what: 'The lines of the bill alone, for other spreadsheets and programs.',
    needsScheme: true,
  },
  {
    name: 'Labour as CSV',
    file: 'labour.csv',
    what: 'The tasks alone: how much, minutes reckoned, minutes taken.',
    needsScheme: true,
  },
  {
    name: 'Tasks in working order',
    file: 'tasks.pdf',
    what: 'To print: the work step by step, with its holds and boxes to tick.',
    needsScheme: true,
  },
  {
    name: 'Connections',
    file: 'connections.pdf',
    what: 'To print: the circuits in order, as found and as they will be, then every place that is worked on with each conductor, its colour and its terminal.',
    needsScheme: true,
  },
  {
    name: 'Cuts, floors and walls',
    file: 'cuts-and-floors.pdf',
    what: 'To print: what is cut from which length, where floors come up, joists are cut and walls are drilled, as a tape finds it.',
    needsScheme: true,
  },
  {
    name: 'Test sheet',
    file: 'test-sheet.pdf',
    what: 'To print: how to connect, what is expected, limits, room for readings; once they are entered under Tests, with them and the checks repeated.',
    needsScheme: true,
  },
  {
    name: 'Record for the certificate',
    file: 'record.pdf',
    what: 'To fill in the minor works or installation certificate from: a part for each circuit, what was measured after the work, comments on what was there, building control, room for all that only you can say. No certificate itself.',
    needsScheme: true,
  },
  {
    name: 'Record as data',
    file: 'record.json',
    what: 'The same for other programs: every field with where it is from and how sure it is.',
    needsScheme: true,
  },
  {
    name: 'Wiring plan',
    file: 'wiring-plan.pdf',
    what: 'Every storey on its own sheet, true to scale when printed at 100 %: cables with their numbers and lengths, heights, distances to both corners, joist cuts. Lists that have no room beside the plan follow it.',
    needsScheme: false,
    onSheets: true,
  },
  {
    name: 'Wiring plan as a picture',
    file: 'wiring-plan.svg',
    what: 'The same sheets, one storey a file, for screens and other programs.',
    eachStorey: true,
    needsScheme: false,
  },
  {
    name: 'Wiring plan for drafting programs',
    file: 'wiring-plan.dxf',
    what: 'DXF in millimetres, a layer for each kind of thing; frozen layers hold the cables as they run, uprights and all.',
    eachStorey: true,
    needsScheme: false,
  },
  {
    name: 'Shopping list',
    file: 'shopping.txt',
    what: 'Text: what to ask for counter by counter, what the van gives, and the cut list.',
    needsScheme: true,
  },
  {
    name: 'Shopping list for spreadsheets',
    file: 'shopping.csv',
    what: 'A row for each size to ask for; none is taken for a formula. To tick it, or print it: the step Kit.',
    needsScheme: true,
  },
  {
    name: 'Estimate as data',
    file: 'estimate.json',
    what: 'Every figure of every scheme, for other programs.',
    needsScheme: false,
  },
  {
    name: 'Job file',
    file: 'job.json',
    what: 'The survey and the schemes: a copy to keep, to send, or to open elsewhere.',
    needsScheme: false,
  },
  {
    name: 'Job with its photos',
    file: 'job.zip',
    what: 'One archive of the job file and its pictures. “Open a job file” takes it in, here or on another server. Made on this device it needs no connection, and has photos that are not sent yet.',
    needsScheme: false,
    isArchive: true,
  },
];

/** Whether it is the job itself, of all schemes and of no day. */
const isWholeJob = ({ file }: Paper): boolean => file === 'job.json' || file === 'job.zip';

const warnings = {
  kept: '',
  keeping: 'The last change is being saved; a file fetched this moment may be without it.',
  'not-kept': 'The last changes are not saved yet: the files would be without them.',
  'changed-elsewhere': 'This job was changed elsewhere: settle that first, the files are of the saved one.',
  gone: 'This job was deleted: restore it, or keep a copy, before files can be fetched.',
} as const;

/** The step Papers: the files of the job, of its shown scheme, as kept. */
export class PapersStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    quotations: { attribute: false },
    shown: { attribute: false },
  };
  static override styles = [
    controlsCss,
    stepCss,
    css`
      ul {
        margin: 12px 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 12px 0;
        border-top: 1px solid var(--rule);
      }
      .files {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 6px;
      }
      .cautions li {
        padding: 6px 0;
        font-size: 0.875rem;
      }
      h3 {
        margin-top: 20px;
      }
      papers-switch {
        margin: 8px 0 10px;
      }
      @media print {
        papers-switch {
          display: none;
        }
        /* A sheet that is worked from has its own head. */
        :host([sheet-alone]) {
          padding: 0;
        }
        :host([sheet-alone]) :is(h2, .hint) {
          display: none;
        }
      }
      .warning p {
        margin: 0 0 4px;
      }
      .warning {
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  declare view: JobView;
  declare quotations: QuotationsView;
  declare shown: PaperPart;

  constructor() {
    super();
    this.shown = 'files';
  }

  override willUpdate(): void {
    this.toggleAttribute('sheet-alone', this.shown !== 'files');
  }

  override render(): TemplateResult {
    const { view } = this;
    return html`<h2 tabindex="-1">Papers</h2>
      <papers-switch .shown=${this.shown}></papers-switch>
      <p class="hint">
        ${view.scheme === null ? 'As found: there is no scheme yet' : view.scheme.name}. ${view.job.reference},
        ${dayWords(view.date)}, state ${stateTag(view.job)}.
      </p>
      ${this.#part()}`;
  }

  #part(): TemplateResult {
    switch (this.shown) {
      case 'files':
        return this.#files();
      case 'connections':
        return html`<connection-sheet .view=${this.view}></connection-sheet>`;
      case 'tasks':
        return html`<task-sheet .view=${this.view}></task-sheet>`;
      case 'floors':
        return html`<floor-sheet .view=${this.view}></floor-sheet>`;
      case 'tests':
        return html`<test-sheet .view=${this.view}></test-sheet>`;
    }
  }

  #files(): TemplateResult {
    const { view } = this;
    const warning = warnings[view.keeping];
    return html`<danger-warning .view=${view}></danger-warning>
      ${this.#demoWarning()}
      ${warning === '' ? nothing : html`<p class="warning" role="status">${warning}</p>`}
      <quotation-part .view=${view} .revision=${nextRevision(this.quotations.quotations)}></quotation-part>
      <issued-quotations .view=${view} .quotations=${this.quotations}></issued-quotations>
      <h3>For the work</h3>
      <ul>
        ${papers.map((paper) => this.#paper(paper))}
      </ul>
      <p class="hint">
        The state is a short name of this job as it stands, on workbook and plan: a paper with the same one is of the
        same job, to the last fact; one with another is of an earlier or a later state. Prices may have moved since: the
        workbook names its price list.
      </p>
      <built-work .view=${view}></built-work>
      <actual-work .view=${view}></actual-work>
      <h3>What goes with every paper</h3>
      <ul class="cautions">
        ${cautionsOf((view.scheme ?? view.estimate.asFound).worked).map(({ words }) => html`<li>${words}</li>`)}
        <li>${view.estimate.editionNote}</li>
      </ul>`;
  }

  /** Said before anything can be fetched: a customer must not be sent invented prices unawares. */
  #demoWarning(): TemplateResult | typeof nothing {
    const warnings = demoWarnings(this.view.library, this.view.scheme);
    if (warnings.length === 0) return nothing;
    return html`<div class="warning">
      ${warnings.map((words) => html`<p><strong>${words}</strong></p>`)}
      <p>Put in your own: <a href="/firm">Firm, prices and norms</a></p>
    </div>`;
  }

  #paper(paper: Paper): TemplateResult {
    const missing = paper.needsScheme && this.view.scheme === null;
    return html`<li>
      <strong>${paper.name}</strong>
      <div class="hint">${paper.what}</div>
      <div class="files">
        ${
          missing
            ? html`<span class="hint">Wants a scheme: make one in <em>Ways</em>.</span>`
            : paper.eachStorey === true
              ? this.#eachStorey(paper)
              : this.#link(paper, '', null)
        }
        ${paper.onSheets === true ? sheetNames.map((sheet) => this.#link(paper, `All on ${sheet}`, null, sheet)) : nothing}
        ${paper.isArchive === true ? html`<button @click=${() => send(this, 'archive-asked', null)}>Make it on this device</button>` : nothing}
      </div>
    </li>`;
  }

  /** The storeys that have a plan; of the others it is said why they have none. */
  #eachStorey(paper: Paper): TemplateResult {
    const { scheme, estimate } = this.view;
    const storeys = storeysToDraw(scheme ?? estimate.asFound);
    if (storeys.every(({ id }) => id === ''))
      return html`<span class="hint">No plan yet: the job has no storey.</span>`;
    const empty = storeys.filter(({ isEmpty }) => isEmpty).map(({ name }) => name);
    return html`${storeys
      .filter(({ isEmpty }) => !isEmpty)
      .map((storey) => this.#link(paper, storey.name, storey.id))}
      ${
        empty.length === 0
          ? nothing
          : html`<span class="hint">
              No plan of ${empty.join(', ')}: no walls and no placed points there, so nothing to draw. Rooms are drawn in
              As found; without walls the bill is counted by typical lengths.
            </span>`
      }`;
  }

  #link(paper: Paper, which: string, storeyId: string | null, sheet?: SheetName): TemplateResult {
    const { job, scheme, date } = this.view;
    const query = new URLSearchParams();
    if (scheme !== null && !isWholeJob(paper)) query.set('scheme', scheme.id);
    if (storeyId !== null) query.set('storey', storeyId);
    if (sheet !== undefined) query.set('sheet', sheet);
    // The server's day may be another one: what is fetched is dated as the screen says.
    if (!isWholeJob(paper)) query.set('date', date);
    const seen = which === '' ? `Fetch ${paper.file.split('.').at(-1)?.toUpperCase()}` : which;
    return html`<a
      class="button"
      download
      href=${`/api/jobs/${encodeURIComponent(job.id)}/exports/${paper.file}?${query}`}
      aria-label=${`${seen}: ${paper.name}`}
      >${seen}</a
    >`;
  }
}
customElements.define('papers-step', PapersStep);
declare global {
  interface HTMLElementTagNameMap {
    'papers-step': PapersStep;
  }
}
