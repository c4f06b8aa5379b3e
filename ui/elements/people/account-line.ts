import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Session } from '../../controllers/who-is-here.ts';
import { roleNames } from '../../rights.ts';
import { controlsCss } from '../shared-styles.ts';

/** Who is signed in, and where to change that; of whoever only reads, that they do. */
export class AccountLine extends LitElement {
  static override properties: PropertyDeclarations = { session: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        background: var(--block);
        color: var(--block-ink);
      }
      nav {
        display: flex;
        gap: 0 18px;
        align-items: center;
        height: 44px;
        padding: 0 20px;
        overflow: hidden;
        font-size: 0.875rem;
        white-space: nowrap;
      }
      span {
        flex: 1;
        overflow: hidden;
        text-overflow: ellipsis;
      }
      a {
        display: flex;
        align-items: center;
        min-height: 44px;
        color: var(--block-ink);
      }
      @media (max-width: 700px) {
        nav {
          padding: 0 12px;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];
  /** Null where it could not be asked for. */
  declare session: Session | null;

  override render(): TemplateResult | typeof nothing {
    const { person = null, role = null } = this.session ?? {};
    if (person === null || role === null) return nothing;
    const reads = role === 'read-only';
    return html`<nav aria-label="Who is signed in">
      <span title=${person.email}>${reads ? 'You read here, and change nothing' : `${person.name}, ${roleNames[role].toLowerCase()}`}</span>
      ${role === 'owner' ? html`<a href="/people">People</a>` : nothing}
      <a href="/account">Account</a>
    </nav>`;
  }
}
customElements.define('account-line', AccountLine);
declare global {
  interface HTMLElementTagNameMap {
    'account-line': AccountLine;
  }
}
