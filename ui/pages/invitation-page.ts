import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { ApiClient } from '../controllers/api-client.ts';
import type { WhoIsHere } from '../controllers/who-is-here.ts';
import { formCss, formPageCss } from '../elements/people/form-styles.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import { errorWords } from '../error-words.ts';
import { type Role, roleNames, roleWords } from '../rights.ts';
import { dayWords } from '../written.ts';

/** Whom a link is for. */
interface Invited {
  readonly name: string;
  readonly role: Role;
  readonly isNewAccount: boolean;
  readonly expiresAt: string;
}

/** Setting a password by the link that an owner passed on; its token stands in the address behind the hash, which is sent nowhere. */
export class InvitationPage extends LitElement {
  static override properties: PropertyDeclarations = {
    here: { attribute: false },
    token: { type: String },
    invited: { state: true },
    trouble: { state: true },
    busy: { state: true },
  };
  static override styles = [controlsCss, formCss, formPageCss];
  declare here: WhoIsHere;
  declare token: string;
  /** Null until it is known. */
  declare private invited: Invited | null;
  declare private trouble: string;
  declare private busy: boolean;

  constructor() {
    super();
    this.token = '';
    this.invited = null;
    this.trouble = '';
    this.busy = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'Set a password · Ringwright';
    void this.#look();
  }

  async #look(): Promise<void> {
    this.trouble = '';
    try {
      const body = JSON.stringify({ token: this.token });
      const answer = await new ApiClient().ask('POST', '/api/invitation', { body });
      this.invited = (await answer.json()) as Invited;
    } catch (error) {
      this.trouble = errorWords(error);
    }
  }

  async #send(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    if (this.busy) return;
    const form = new FormData(event.target as HTMLFormElement);
    const said = (name: string): string => String(form.get(name) ?? '').trim();
    const password = String(form.get('password') ?? '');
    if (password !== form.get('again')) {
      this.trouble = 'The two passwords differ.';
      return;
    }
    this.busy = true;
    const account = this.invited?.isNewAccount === true ? { name: said('name'), email: said('email') } : {};
    try {
      await this.here.useInvitation({ token: this.token, password, ...account });
      location.replace('/');
    } catch (error) {
      this.trouble = errorWords(error);
      this.busy = false;
    }
  }

  override render(): TemplateResult {
    const { invited, trouble } = this;
    return html`<main>
      <h1 tabindex="-1">${invited?.isNewAccount === false ? 'Set a new password' : 'Welcome to Ringwright'}</h1>
      ${invited === null ? (trouble === '' ? html`<p>Looking whom the link is for…</p>` : nothing) : this.#form(invited)}
      ${
        trouble === ''
          ? nothing
          : html`<p class="trouble" role="alert">${trouble}</p>
              ${invited === null ? html`<p><button @click=${() => void this.#look()}>Look again</button></p>` : nothing}`
      }
    </main>`;
  }

  #form({ name, role, isNewAccount, expiresAt }: Invited): TemplateResult {
    return html`<p>
        ${isNewAccount ? `You are invited as ${name}` : `The link is for ${name}`}. ${roleNames[role]}: ${roleWords[role]}. It
        goes once, until ${dayWords(expiresAt.slice(0, 10))}.
      </p>
      <form @submit=${(event: SubmitEvent) => void this.#send(event)}>
        ${
          isNewAccount
            ? html`<label>Your name<input name="name" autocomplete="name" maxlength="100" .value=${name} required /></label>
                <label>Your e-mail address, to sign in with<input name="email" type="email" autocomplete="username" required /></label>`
            : nothing
        }
        <label>Password, 12 characters or more<input name="password" type="password" autocomplete="new-password" minlength="12" maxlength="200" required /></label>
        <label>The same again<input name="again" type="password" autocomplete="new-password" required /></label>
        <div class="acts"><button class="main" ?disabled=${this.busy}>Set the password and go in</button></div>
      </form>`;
  }
}
customElements.define('invitation-page', InvitationPage);
declare global {
  interface HTMLElementTagNameMap {
    'invitation-page': InvitationPage;
  }
}
