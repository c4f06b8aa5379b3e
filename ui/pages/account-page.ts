import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PeopleClient } from '../controllers/people-client.ts';
import type { WhoIsHere } from '../controllers/who-is-here.ts';
import { formCss, formPageCss } from '../elements/people/form-styles.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import { errorWords } from '../error-words.ts';
import { roleNames, roleWords } from '../rights.ts';

/** One's own account: password, and signing out. */
export class AccountPage extends LitElement {
  static override properties: PropertyDeclarations = {
    here: { attribute: false },
    people: { attribute: false },
    unsent: { attribute: false },
    trouble: { state: true },
    done: { state: true },
  };
  static override styles = [controlsCss, formCss, formPageCss];
  declare here: WhoIsHere;
  declare people: PeopleClient;
  /** True where this device has what the server has not. */
  declare unsent: boolean;
  declare private trouble: string;
  declare private done: string;

  constructor() {
    super();
    this.unsent = false;
    this.trouble = '';
    this.done = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'Account · Ringwright';
  }

  async #attempt(act: () => Promise<string>): Promise<void> {
    try {
      this.done = await act();
      this.trouble = '';
    } catch (error) {
      [this.done, this.trouble] = ['', errorWords(error)];
    }
  }

  #change(event: SubmitEvent): void {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const said = new FormData(form);
    const [password, again] = [String(said.get('password')), String(said.get('again'))];
    void this.#attempt(async () => {
      if (password !== again) throw new Error('The two new ones differ.');
      await this.people.changePassword(String(said.get('current')), password);
      form.reset();
      return 'Changed. Wherever else you were signed in, you are so no longer.';
    });
  }

  override render(): TemplateResult {
    const { person = null, role = null } = this.here.session ?? {};
    return html`<main>
      <p><a href="/">All jobs</a></p>
      <h1 tabindex="-1">Account</h1>
      ${person === null || role === null ? html`<p>Nobody is signed in on this machine, or there is no connection.</p>` : html`<p>${person.name}, ${person.email}. ${roleNames[role]}: ${roleWords[role]}.</p>${this.#forms()}`}
    </main>`;
  }

  #forms(): TemplateResult {
    const { trouble, done, unsent } = this;
    return html`${trouble === '' ? nothing : html`<p class="trouble" role="alert">${trouble}</p>`}
      ${done === '' ? nothing : html`<p class="done" role="status">${done}</p>`}
      <h2>Change the password</h2>
      <form @submit=${(event: SubmitEvent) => this.#change(event)}>
        <label>The one of now<input name="current" type="password" autocomplete="current-password" required /></label>
        <label>A new one, 12 characters or more<input name="password" type="password" autocomplete="new-password" minlength="12" maxlength="200" required /></label>
        <label>The same again<input name="again" type="password" autocomplete="new-password" required /></label>
        <div class="acts"><button>Change it</button></div>
      </form>
      <h2>Sign out</h2>
      <p>
        ${
          unsent
            ? 'Something on this device is not sent yet. It stays here, and goes out once somebody of your firm signs in on this device again; until then nobody sees it.'
            : 'Everything is sent. What this device keeps of your jobs is removed from it, and so is what you began to type of an answer or a variation and did not record.'
        }
      </p>
      <p>
        <button class="main" @click=${() => void this.#attempt(async () => this.here.signOut(this.unsent).then(() => ''))}>
          Sign out
        </button>
      </p>`;
  }
}
customElements.define('account-page', AccountPage);
declare global {
  interface HTMLElementTagNameMap {
    'account-page': AccountPage;
  }
}
