import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { controlsCss } from '../shared-styles.ts';
import './sign-in-form.ts';

/** Said where a session ended in the middle of work: beside it, never over all of it, and it can wait. */
export class SignedOut extends LitElement {
  static override properties: PropertyDeclarations = {
    signIn: { attribute: false },
    later: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      section {
        position: fixed;
        right: 12px;
        bottom: 12px;
        z-index: 20;
        display: grid;
        gap: 10px;
        width: min(420px, calc(100vw - 24px));
        max-height: calc(100dvh - 24px);
        padding: 14px 16px;
        overflow: auto;
        box-sizing: border-box;
        background: var(--sheet);
        border: 2px solid var(--copper);
      }
      p {
        margin: 0;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];
  /** Rejects where it is refused. */
  declare signIn: (email: string, password: string) => Promise<void>;
  declare private later: boolean;

  constructor() {
    super();
    this.later = false;
  }

  override render(): TemplateResult {
    const put = (later: boolean) => () => {
      this.later = later;
    };
    if (this.later)
      return html`<section aria-label="Signed out"><button @click=${put(false)}>Sign in to send what is kept here</button></section>`;
    return html`<section aria-label="Signed out">
      <p role="alert"><strong>You are signed out.</strong> What you do is kept on this device, and goes out once you sign in again.</p>
      <sign-in-form .signIn=${this.signIn}></sign-in-form>
      <button class="quiet" @click=${put(true)}>Later</button>
    </section>`;
  }
}
customElements.define('signed-out', SignedOut);
declare global {
  interface HTMLElementTagNameMap {
    'signed-out': SignedOut;
  }
}
