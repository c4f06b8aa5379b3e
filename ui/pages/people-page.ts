import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type {
  Invitation,
  MadeInvitation,
  PeopleClient,
  PeopleList,
  Person,
} from '../controllers/people-client.ts';
import { formCss, formPageCss } from '../elements/people/form-styles.ts';
import '../elements/people/link-once.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import { errorWords } from '../error-words.ts';
import { type Role, roleNames, roleWords } from '../rights.ts';
import { dayWords } from '../written.ts';

const roles = Object.keys(roleNames) as Role[];

/** The people of the firm, for an owner: who is let in, what they may, who goes. */
export class PeoplePage extends LitElement {
  static override properties: PropertyDeclarations = {
    people: { attribute: false },
    origin: { type: String },
    ownId: { type: String },
    list: { state: true },
    made: { state: true },
    closing: { state: true },
    trouble: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    formPageCss,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        gap: 6px;
        padding: 10px 0;
        border-bottom: 1px solid var(--rule);
      }
      .who {
        display: flex;
        flex-wrap: wrap;
        gap: 0 12px;
      }
      li select {
        width: auto;
        max-width: 100%;
      }
    `,
  ];
  declare people: PeopleClient;
  /** Where others reach the server. */
  declare origin: string;
  /** Of whoever looks. */
  declare ownId: string;
  declare private list: PeopleList | null;
  /** The link that was made last; null: none. */
  declare private made: MadeInvitation | null;
  /** Whose account is about to be closed. */
  declare private closing: string | null;
  declare private trouble: string;

  constructor() {
    super();
    this.list = null;
    this.made = null;
    this.closing = null;
    this.trouble = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'People · Ringwright';
    void this.#do(async () => {});
  }

  /** Does something, then looks how it stands. */
  async #do(act: () => Promise<void>): Promise<void> {
    try {
      await act();
      this.list = await this.people.list();
      this.trouble = '';
    } catch (error) {
      this.trouble = errorWords(error);
    }
  }

  #invite(event: SubmitEvent): void {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const said = new FormData(form);
    void this.#do(async () => {
      this.made = await this.people.invite(String(said.get('name')).trim(), said.get('role') as Role);
      form.reset();
    });
  }

  override render(): TemplateResult {
    const { list, trouble, made } = this;
    const open = list?.people.filter(({ closedAt }) => closedAt === null) ?? [];
    const closed = list?.people.filter(({ closedAt }) => closedAt !== null) ?? [];
    return html`<main>
      <p><a href="/">All jobs</a></p>
      <h1 tabindex="-1">People</h1>
      ${trouble === '' ? nothing : html`<p class="trouble" role="alert">${trouble} <button @click=${() => void this.#do(async () => {})}>Look again</button></p>`}
      ${list === null && trouble === '' ? html`<p class="hint">Fetching who there is…</p>` : nothing}
      ${made === null ? nothing : this.#link(made)}
      <ul>${open.map((one) => this.#person(one))}</ul>
      ${list === null ? nothing : html`<h2>Invite somebody</h2>${this.#form()}`}
      ${list === null || list.invitations.length === 0 ? nothing : html`<h2>Not used yet</h2><ul>${list.invitations.map((one) => this.#invitation(one))}</ul>`}
      ${closed.length === 0 ? nothing : html`<h2>Closed</h2><ul>${closed.map(({ name, email, closedAt }) => html`<li><span class="who"><strong>${name}</strong><span>${email}</span><span class="hint">closed on ${dayWords((closedAt ?? '').slice(0, 10))}</span></span></li>`)}</ul>`}
    </main>`;
  }

  #link({ token, name, expiresAt, accountId }: MadeInvitation): TemplateResult {
    const until = dayWords(expiresAt.slice(0, 10));
    const what = accountId === null ? 'sets up an account' : 'sets a new password';
    return html`<link-once
      .href=${`${this.origin}/invitation#${token}`}
      .words=${`By this link ${name} ${what}, once, until ${until}.`}
    ></link-once>`;
  }

  #roles(chosen: Role): TemplateResult[] {
    return roles.map(
      (role) =>
        html`<option value=${role} ?selected=${role === chosen}>${roleNames[role]}: ${roleWords[role]}</option>`,
    );
  }

  #form(): TemplateResult {
    return html`<form @submit=${(event: SubmitEvent) => this.#invite(event)}>
      <label>Whom<input name="name" maxlength="100" autocomplete="off" required /></label>
      <label>What they may<select name="role">${this.#roles('estimator')}</select></label>
      <div class="acts"><button class="main">Make a link to pass on</button></div>
    </form>`;
  }

  #person(person: Person): TemplateResult {
    const { id, name, email, role, since } = person;
    const isOwn = id === this.ownId;
    return html`<li>
      <span class="who"><strong>${name}</strong><span>${email}</span><span class="hint">since ${dayWords(since.slice(0, 10))}${isOwn ? ', you' : ''}</span></span>
      ${isOwn ? html`<span>${roleNames[role]}</span>` : this.#acts(person)}
    </li>`;
  }

  #acts({ id, name, role }: Person): TemplateResult {
    const ask = (closing: string | null) => () => {
      this.closing = closing;
    };
    if (this.closing === id)
      return html`<p>Close the account of ${name}? They are signed out everywhere at once; what they did stays.</p>
        <div class="acts">
          <button class="main" @click=${() => void this.#do(() => this.people.close(id))}>Yes: close it</button>
          <button @click=${ask(null)}>Not now</button>
        </div>`;
    return html`<div class="acts">
      <select
        aria-label=${`What ${name} may`}
        @change=${(event: Event) => void this.#do(() => this.people.setRole(id, (event.target as HTMLSelectElement).value as Role))}
      >
        ${this.#roles(role)}
      </select>
      <button
        @click=${() =>
          void this.#do(async () => {
            this.made = await this.people.linkForPassword(id);
          })}
      >
        Link for a new password<span class="visually-hidden">: ${name}</span>
      </button>
      <button @click=${ask(id)}>Close<span class="visually-hidden"> the account of ${name}</span></button>
    </div>`;
  }

  #invitation({ id, name, role, accountId, expiresAt }: Invitation): TemplateResult {
    const what = accountId === null ? roleNames[role] : 'new password';
    return html`<li>
      <span class="who"><strong>${name}</strong><span>${what}</span><span class="hint">until ${dayWords(expiresAt.slice(0, 10))}</span></span>
      <div class="acts"><button @click=${() => void this.#do(() => this.people.withdraw(id))}>Withdraw<span class="visually-hidden"> the link for ${name}</span></button></div>
    </li>`;
  }
}
customElements.define('people-page', PeoplePage);
declare global {
  interface HTMLElementTagNameMap {
    'people-page': PeoplePage;
  }
}
