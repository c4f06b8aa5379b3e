import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { WhoIsHere } from '../controllers/who-is-here.ts';
import { formPageCss } from '../elements/people/form-styles.ts';
import '../elements/people/sign-in-form.ts';
import { controlsCss } from '../elements/shared-styles.ts';

/** What is shown before anything else, where somebody has to sign in. */
export class SignInPage extends LitElement {
  static override properties: PropertyDeclarations = { here: { attribute: false } };
  static override styles = [controlsCss, formPageCss];
  declare here: WhoIsHere;

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'Sign in · Ringwright';
  }

  override render(): TemplateResult {
    return html`<main>
      <h1 tabindex="-1">Sign in to Ringwright</h1>
      <sign-in-form .signIn=${(email: string, password: string) => this.here.signIn(email, password)}></sign-in-form>
      <h2>No account, or the password is forgotten</h2>
      <p>Ask an owner of your firm for a link. The owner’s own is set anew on the machine that the server runs on.</p>
    </main>`;
  }
}
customElements.define('sign-in-page', SignInPage);
declare global {
  interface HTMLElementTagNameMap {
    'sign-in-page': SignInPage;
  }
}
