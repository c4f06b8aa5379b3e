import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { ApiClient } from '../controllers/api-client.ts';
import { QuotationLinks } from '../controllers/quotation-links.ts';
import { WhoIsHere } from '../controllers/who-is-here.ts';
import '../elements/people/account-line.ts';
import '../elements/people/signed-out.ts';
import '../elements/toast-line.ts';
import type { QuotationAsk } from '../quotations/quotations-view.ts';
import { mayChange } from '../rights.ts';
import { AppShell } from './app-shell.ts';
import './invitation-page.ts';
import './sign-in-page.ts';

/** The events by which something of a job or the library is changed. */
const changing = [
  'job-edit',
  'job-edit-beside',
  'point-placed',
  'photos-taken',
  'underlay-chosen',
  'underlay-straightened',
  'way-drawn',
  'undo-asked',
  'library-edit',
  'job-copied',
  'job-removed',
  'job-wanted-back',
] as const;

/**
 * Lets people in: nothing of the firm is shown before it is known who is here. In the page itself, not in a shadow root:
 * what it shows is the whole of it.
 */
export class FrontDoor extends LitElement {
  static override properties: PropertyDeclarations = {
    said: { state: true },
  };
  declare private said: string;
  readonly #here = new WhoIsHere();
  readonly #links = new QuotationLinks(new ApiClient(this.#here.fetch), this.#here);
  #shell: AppShell | null = null;
  #wasOver = false;
  #endWatch = (): void => {};

  constructor() {
    super();
    this.said = '';
    for (const name of changing) this.addEventListener(name, this.#changed, { capture: true });
    this.addEventListener('quotation-asked', this.#asked, { capture: true });
    this.addEventListener('quotation-links-asked', ({ detail }) => void this.#links.do(detail));
    this.addEventListener('toast-closed', () => {
      this.said = '';
    });
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#endWatch = this.#here.watch(() => this.#toldWho());
    void this.#here.start();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#endWatch();
  }

  #toldWho(): void {
    const { presence } = this.#here;
    if (presence === 'here' && this.#wasOver) {
      // What waited for somebody to sign in goes out, as what waited for a connection does.
      dispatchEvent(new Event('online'));
    }
    this.#wasOver = presence === 'over';
    this.requestUpdate();
  }

  /** The server would refuse it: it is said before anything looks changed. */
  #refuse(event: Event): void {
    event.stopImmediatePropagation();
    this.said = 'With this account you read, and change nothing.';
  }

  readonly #changed = (event: Event): void => {
    if (!mayChange()) this.#refuse(event);
  };

  readonly #asked = (event: CustomEvent<QuotationAsk>): void => {
    const reads = event.detail.do === 'read' || event.detail.do === 'look-again';
    if (!mayChange() && !reads) this.#refuse(event);
  };

  override render(): TemplateResult | typeof nothing {
    const { presence } = this.#here;
    if (location.pathname === '/invitation' && presence !== 'asking')
      return html`<invitation-page .here=${this.#here} .token=${location.hash.slice(1)}></invitation-page>`;
    if (presence === 'asking') return nothing;
    if (presence === 'out') return html`<sign-in-page .here=${this.#here}></sign-in-page>`;
    this.#shell ??= new AppShell(this.#here);
    this.toggleAttribute('reads', !mayChange());
    return html`<account-line .session=${this.#here.session}></account-line>${this.#shell}
      ${presence === 'over' ? html`<signed-out .signIn=${(email: string, password: string) => this.#here.signIn(email, password)}></signed-out>` : nothing}
      <toast-line .words=${this.said}></toast-line>`;
  }
}
customElements.define('front-door', FrontDoor);
declare global {
  interface HTMLElementTagNameMap {
    'front-door': FrontDoor;
  }
}
