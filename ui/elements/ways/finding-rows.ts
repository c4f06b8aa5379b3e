import { css, html, nothing, type TemplateResult } from 'lit';
import { outcomeWords } from '#drawing/marks.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { send } from '../../job-events.ts';
import { counted } from '../../written.ts';
import '../outcome-mark.ts';

/** The look of findings in a row of the step. */
export const findingRowsCss = css`
  .findings {
    display: grid;
    gap: 4px;
    margin: 8px 0 0;
    padding: 0;
    list-style: none;
  }
  .findings button {
    width: 100%;
    padding: 6px 8px;
    font-size: 0.875rem;
    font-weight: 400;
    text-align: left;
    justify-content: flex-start;
  }
  .findings strong {
    font-weight: 600;
  }
  details.folded {
    margin-top: 6px;
  }
  .folded summary {
    font: 500 0.875rem/1.5 var(--text-font);
    color: var(--ink-soft);
  }
  .folded .findings {
    margin-top: 2px;
  }
`;

/** Findings of one rule with one outcome. */
interface Alike {
  readonly finding: Finding;
  readonly subjects: readonly string[];
}

function alike(findings: readonly Finding[]): readonly Alike[] {
  const groups = new Map<string, Alike>();
  for (const finding of findings) {
    const key = `${finding.rule} ${finding.outcome}`;
    const known = groups.get(key);
    groups.set(key, {
      finding: known?.finding ?? finding,
      subjects: [...(known?.subjects ?? []), finding.subject],
    });
  }
  return [...groups.values()];
}

/**
 * Findings as buttons with mark and word, those of one rule together; tapped, all their places light on the plan.
 * What is not proven is folded up: on a first visit that is most of it.
 */
export function findingRows(
  from: EventTarget,
  findings: readonly Finding[],
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  const groups = alike(findings);
  const open = groups.filter(({ finding }) => finding.outcome !== 'not-proven');
  const folded = groups.filter(({ finding }) => finding.outcome === 'not-proven');
  return html`${open.length === 0 ? nothing : rowsOf(from, open)}
    ${
      folded.length === 0
        ? nothing
        : html`<details class="folded">
          <summary><outcome-mark .outcome=${'not-proven'}></outcome-mark> Not proven: ${counted(folded.length, 'check')}</summary>
          ${rowsOf(from, folded)}
        </details>`
    }`;
}

function rowsOf(from: EventTarget, groups: readonly Alike[]): TemplateResult {
  return html`<ul class="findings">
    ${groups.map(
      ({ finding: { outcome, title, subject }, subjects }) =>
        html`<li>
          <button
            @click=${() => {
              send(from, 'things-lit', { subjectIds: subjects });
              send(from, 'thing-chosen', { subjectId: subject });
            }}
          >
            <outcome-mark .outcome=${outcome}></outcome-mark>
            <span
              ><strong>${outcomeWords[outcome]}:</strong> ${title}${
                subjects.length > 1 ? ` (${counted(subjects.length, 'place')})` : nothing
              }</span
            >
          </button>
        </li>`,
    )}
  </ul>`;
}
