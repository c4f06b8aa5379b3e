import { html, nothing, type TemplateResult } from 'lit';
import type { WorkMoved } from '#engine/quotation/work-said.ts';

const list = (head: string, lines: readonly string[]): TemplateResult | typeof nothing =>
  lines.length === 0
    ? nothing
    : html`<dt>${head}</dt>
        ${lines.map((line) => html`<dd>${line}</dd>`)}`;

/** What is done otherwise, in the customer's words: what was agreed and no longer holds, and what is in its place; nothing where nothing is. */
export const workLines = ({ before, now }: WorkMoved): TemplateResult | typeof nothing =>
  before.length === 0 && now.length === 0
    ? nothing
    : html`<dl class="work">${list('As agreed before', before)}${list('Now', now)}</dl>`;
