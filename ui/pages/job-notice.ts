import { html, nothing, type TemplateResult } from 'lit';
import type { DocumentSession } from '../controllers/document-session.ts';
import type { JobDesk } from '../controllers/job-desk.ts';
import '../elements/keeping-line.ts';
import '../elements/keeping-notice.ts';

/** Whether what is said of the keeping takes room from the plan; that it waits for the connection is one line. */
export function takesRoom(session: Pick<DocumentSession<object>, 'keeping' | 'waitsHere'> | null): boolean {
  if (session === null || session.waitsHere) return false;
  return session.keeping !== 'kept' && session.keeping !== 'keeping';
}

/**
 * How far the keeping of a job has got; nothing of one that could not be opened: there is nothing to be called saved. While
 * photos wait to be sent, what is saved is not all of it.
 */
export function keepingLine(
  { session, refusal }: JobDesk,
  photosWaiting: number,
): TemplateResult | typeof nothing {
  if (refusal !== null) return nothing;
  const keeping = session?.keeping ?? 'kept';
  const onlyPhotosWait = keeping === 'kept' && photosWaiting > 0;
  return html`<keeping-line
    .keeping=${onlyPhotosWait ? 'not-kept' : keeping}
    .here=${onlyPhotosWait || (session?.waitsHere ?? false)}
  ></keeping-line>`;
}

/**
 * What keeps a job from being kept, and what can be done.
 *
 * @param waiting how many jobs and how many photos wait to be sent.
 */
export function jobNotice(
  { session, changedTwice }: JobDesk,
  waiting: { readonly jobs: number; readonly photos: number },
): TemplateResult {
  return html`<keeping-notice
    class="notice"
    .keeping=${session?.keeping ?? 'kept'}
    .trouble=${session?.trouble ?? null}
    .theirSavedAt=${session?.theirs?.savedAt ?? null}
    .changedTwice=${changedTwice}
    .unkept=${session?.unkept ?? false}
    .triesAgain=${session?.triesAgain ?? true}
    .here=${session?.waitsHere ?? false}
    .waiting=${waiting.jobs}
    .photos=${waiting.photos}
  ></keeping-notice>`;
}
