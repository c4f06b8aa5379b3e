import { css, html, nothing, type TemplateResult } from 'lit';
import { outcomeWords } from '#drawing/marks.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { send } from '../../job-events.ts';
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
    font-size: 14px;
    font-weight: 400;
    text-align: left;
    justify-content: flex-start;
  }
  .findings strong {
    font-weight: 600;
  }
`;

/** Findings as buttons with mark and word; one tapped is shown on the plan. */
export function findingRows(
  from: EventTarget,
  findings: readonly Finding[],
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  return html`<ul class="findings">
    ${findings.map(
      ({ outcome, title, subject }) =>
        html`<li>
          <button
            @click=${() => {
              send(from, 'things-lit', { subjectIds: [subject] });
              send(from, 'thing-chosen', { subjectId: subject });
            }}
          >
            <outcome-mark .outcome=${outcome}></outcome-mark>
            <span><strong>${outcomeWords[outcome]}:</strong> ${title}</span>
          </button>
        </li>`,
    )}
  </ul>`;
}
