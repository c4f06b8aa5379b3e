import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { setBuilt, setBuiltWords } from '../../edits/built.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { dayWords } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';

/** That the work is done, by which scheme and when, and what was done otherwise: from then on papers are as built. */
export class BuiltWork extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        gap: 8px;
        margin-bottom: 20px;
      }
      h3 {
        margin: 20px 0 0;
      }
      p {
        margin: 0;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult | typeof nothing {
    const { job, scheme, date } = this.view;
    if (scheme === null) return nothing;
    const { built } = job;
    if (built === undefined)
      return html`<h3>When the work is done</h3>
        <p class="hint">
          Put the drawing right first where something was done otherwise. Then say that “${scheme.name}” is done: from then
          on its papers are as built, and the pack tells what changed since it was agreed.
        </p>
        <div>
          <button @click=${() => send(this, 'job-edit', setBuilt(scheme.id, date))}>The work is done</button>
        </div>`;
    const name = job.schemes.find(({ id }) => id === built.scheme)?.name ?? built.scheme;
    return html`<h3>The work is done</h3>
      <p>
        “${name}”, ${dayWords(built.on)}.
        ${built.scheme === scheme.id ? 'Its papers are as built.' : 'The scheme that is shown is another one: its papers are not as built.'}
      </p>
      <text-field
        label="Finished on"
        kind="date"
        .value=${built.on}
        @field-change=${({ detail }: CustomEvent<FieldChange<string>>) => {
          if (detail.value !== '') send(this, 'job-edit', setBuilt(built.scheme, detail.value));
        }}
      ></text-field>
      <text-field
        label="What was done otherwise, or is to be known of it"
        multiline
        .value=${built.words ?? ''}
        @field-change=${({ detail }: CustomEvent<FieldChange<string>>) => send(this, 'job-edit', setBuiltWords(detail.value))}
      ></text-field>
      <div>
        <button class="small" @click=${() => send(this, 'job-edit', setBuilt(built.scheme, null))}>It is not done yet</button>
      </div>`;
  }
}
customElements.define('built-work', BuiltWork);
declare global {
  interface HTMLElementTagNameMap {
    'built-work': BuiltWork;
  }
}
