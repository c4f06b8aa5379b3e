import { withDelay } from './device-fields.ts';
import '../fields/tick-field.ts';
import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Board } from '#model/installation.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import {
  addBoard,
  putRcd,
  removeRcd,
  setBoardCertainty,
  setBoardFact,
  setNoRcds,
} from '../../edits/boards.ts';
import { markable, markableEntry } from '../../edits/marked.ts';
import { removeBoard } from '../../edits/remove-things.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { counted } from '../../written.ts';
import '../photos/photo-strip.ts';
import { controlsCss } from '../shared-styles.ts';
import { certaintyEdits, edits, mustText, numberFact, textFact, yesNoFact } from './fact-fields.ts';
import { boardFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { rcdTypes } from './found-words.ts';
import './place-fields.ts';
import type { PlaceChange } from './place-fields.ts';
import { removeButton, thingRow } from './thing-row.ts';

type Rcd = Board['rcds'][number];

/** The boards, each with its form: ways, RCDs, what it takes, where it is. */
export class BoardList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    placing: { attribute: false },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  /** The board that the plan waits to be shown the place of. */
  declare placing: string | null;

  constructor() {
    super();
    keepFocus(this);
    this.placing = null;
  }

  override render(): TemplateResult {
    const { boards, circuits } = this.view.job;
    return html`<ul class="list">
        ${boards.map((board) => {
          const count = circuits.filter((circuit) => circuit.board === board.id).length;
          const facts = `${counted(count, 'circuit')}, ${board.spareWays === undefined ? 'spare ways not known' : counted(board.spareWays, 'spare way')}`;
          return thingRow(this.view, {
            id: board.id,
            name: board.label,
            facts,
            wide: true,
            form: () => this.#form(board),
          });
        })}
      </ul>
      <div class="buttons"><button class="small" @click=${() => this.#add()}>Add a board</button></div>`;
  }

  #add(): void {
    const id = newId();
    send(this, 'job-edit', addBoard(id, `Board ${this.view.job.boards.length + 1}`));
    send(this, 'thing-chosen', { subjectId: id });
  }

  #form(board: Board): TemplateResult {
    const facts = boardFacts(board);
    return html`<div class="fields">
      ${numberFact(facts, 'spareWays', { label: 'Spare ways', unit: '', max: 200, whole: true })}
      ${yesNoFact(facts, 'rcboAvailable', { label: 'An RCBO is still sold for it', help: 'Decides between an RCBO and a new board or enclosure.' })}
      ${this.#rcds(board)}
      ${mustText('Label', board.label, (text) => setBoardFact(board, 'label', text))}
      ${numberFact(facts, 'ways', { label: 'Ways in all', unit: '', max: 200, whole: true })}
      ${numberFact(facts, 'zdbOhm', { label: 'Z at the board', unit: 'Ω', max: 1e7 })}
      ${textFact(facts, 'make', { label: 'Make, as on its cover' })}
      <h4>Photos</h4>
      <photo-strip .assets=${this.view.job.assets} .of=${{ kind: 'board', id: board.id }} .name=${board.label} .photos=${board.photos ?? []}></photo-strip>
      <h4>Where it is</h4>
      <place-fields
        .job=${this.view.job}
        .place=${board.place}
        .name=${board.label}
        .newHeightMm=${1450}
        .waiting=${this.placing === board.id}
        @place-change=${(event: CustomEvent<PlaceChange>) => send(this, 'job-edit', setBoardFact(board, 'place', event.detail.place))}
      ></place-fields>
      ${removeButton(board.label, (from) => send(from, 'job-edit', removeBoard(board)), 'its circuits')}
    </div>`;
  }

  #rcds(board: Board): TemplateResult {
    const add = (): void => send(this, 'job-edit', this.#marked(board, { id: newId(), type: 'A', mA: 30 }));
    const certainty = board.certainty?.rcds;
    const isOpen = board.rcds.length === 0 && certainty === 'unknown';
    const some = board.rcds.length === 0 ? [] : [{ value: 'some', label: 'Those below' }];
    return html`<h4>RCDs that protect several circuits</h4>
      <choice-field
        data-fact="rcds"
        label="RCDs in the board"
        .empty=${board.rcds.length === 0 ? 'Not looked at' : null}
        .options=${board.rcds.length === 0 ? [{ value: 'none', label: 'None' }] : some}
        .value=${isOpen ? null : board.rcds.length === 0 ? 'none' : 'some'}
        .certainty=${isOpen ? null : (certainty ?? 'seen')}
        @field-change=${edits<'none' | 'some' | null>((word) => {
          if (word === 'some') return null;
          const edit = setNoRcds(board, word ?? 'not-looked-at');
          return markableEntry(edit, word, (sure) => setBoardCertainty(board, 'rcds', sure));
        })}
        @certainty-change=${certaintyEdits((sure) => setBoardCertainty(board, 'rcds', sure))}
      ></choice-field>
      ${board.rcds.map((rcd, index) => this.#rcd(board, rcd, index + 1))}
      <div class="buttons"><button class="small" @click=${add}>Add an RCD</button></div>`;
  }

  /** An RCD put in, marked as the person knows it. */
  #marked(board: Board, rcd: Rcd): JobEdit {
    return markable(putRcd(board, rcd), (certainty) => setBoardCertainty(board, 'rcds', certainty));
  }

  #rcd(board: Board, rcd: Rcd, number: number): TemplateResult {
    const put = (facts: Partial<Rcd>) => this.#marked(board, { ...rcd, ...facts });
    return html`<div class="pair">
        <choice-field
          .label=${`RCD ${number}: type`}
          .empty=${null}
          .options=${rcdTypes}
          .value=${rcd.type}
          @field-change=${edits<Rcd['type']>((type) => put({ type }))}
        ></choice-field>
        <number-field
          .label=${`RCD ${number}: trips at`}
          unit="mA"
          .min=${1}
          .max=${10_000}
          .value=${rcd.mA}
          @field-change=${edits<number | null>((mA) => (mA === null ? null : put({ mA })))}
        ></number-field>
      </div>
      <tick-field
        .label=${`RCD ${number}: delayed, type S`}
        .value=${rcd.delayed === true}
        @field-change=${edits<boolean>((isDelayed) => this.#marked(board, withDelay(rcd, isDelayed)))}
      ></tick-field>
      <div class="buttons">
        <button class="small" @click=${() => send(this, 'job-edit', removeRcd(board, rcd.id))}>Remove RCD ${number}</button>
      </div>`;
  }
}
customElements.define('board-list', BoardList);
declare global {
  interface HTMLElementTagNameMap {
    'board-list': BoardList;
  }
}
