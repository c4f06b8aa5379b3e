import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { refusedWords } from '../../controllers/who-is-here.ts';
import { controlsCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';

/** E-mail address and password; whoever shows it says what becomes of them. */
export class SignInForm extends LitElement {
  static override properties: PropertyDeclarations = {
    signIn: { attribute: false },
    trouble: { state: true },
    busy: { state: true },
  };
  static override styles = [controlsCss, formCss];
  /** Rejects where it is refused. */
  declare signIn: (email: string, password: string) => Promise<void>;
  declare private trouble: string;
  declare private busy: boolean;

  constructor() {
    super();
    this.trouble = '';
    this.busy = false;
  }

  async #send(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    if (this.busy) return;
    const form = new FormData(event.target as HTMLFormElement);
    this.busy = true;
    try {
      await this.signIn(String(form.get('email')), String(form.get('password')));
      this.trouble = '';
    } catch (error) {
      this.trouble = refusedWords(error);
    }
    this.busy = false;
  }

  override render(): TemplateResult {
    return html`<form @submit=${(event: SubmitEvent) => void this.#send(event)}>
      <label>E-mail address
        <input name="email" type="email" autocomplete="username" required />
      </label>
      <label>Password
        <input name="password" type="password" autocomplete="current-password" required />
      </label>
      ${this.trouble === '' ? nothing : html`<p class="trouble" role="alert">${this.trouble}</p>`}
      <div class="acts"><button class="main" ?disabled=${this.busy}>${this.busy ? 'Signing in…' : 'Sign in'}</button></div>
    </form>`;
  }
}
customElements.define('sign-in-form', SignInForm);
declare global {
  interface HTMLElementTagNameMap {
    'sign-in-form': SignInForm;
  }
}
