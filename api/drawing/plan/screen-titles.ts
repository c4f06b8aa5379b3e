import type { Worked } from '#engine/connections/worked.ts';
import { metres } from '#engine/quotation/said.ts';
import { HELD_FAST } from '../lock-mark.ts';
import { pointKindWords } from '../point-kind-words.ts';
import type { Shape } from '../scene.ts';
import { lockedThings } from './lock-marks.ts';

/** What a thing of the plan is called by who hears it and does not see whether it is copper, dashed or grey. */
function titleOf(worked: Worked, subject: string, title: string): string {
  const point = worked.job.points.find(({ id }) => id === subject);
  if (point !== undefined) {
    const kind = pointKindWords[point.kind].toLowerCase();
    const status = {
      existing: 'found',
      wanted: 'wanted',
      removed: 'to be taken out',
      replaced: 'to be replaced',
    }[point.status];
    return `${title}: ${kind}, ${status}`;
  }
  const leg = worked.foundRuns.get(subject);
  if (leg !== undefined) return `Cable as found, ${title}${leg.pinned ? '' : ', way assumed'}`;
  const run = worked.runs.find(({ id }) => id === subject);
  if (run === undefined) return title;
  const length = run.lengthMm === null ? 'length not known' : metres(run.lengthMm);
  return `New cable, ${title}, ${length}${run.pinned ? ', way drawn by hand' : ''}`;
}

/** The lettering that is drawn beside a symbol, letters within it left out; empty for none. */
function letteringOf(shapes: readonly Shape[]): string {
  const last = shapes.at(-1);
  return last?.kind === 'text' ? last.text : '';
}

/** Begins with the lettering as it is drawn, so that who says what they see is understood: "W1 h 450 mm above floor". */
function withLettering(title: string, lettering: string): string {
  if (lettering === '?' || title.includes(lettering)) return title;
  const [name = '', height] = lettering.split(' h ');
  return height === undefined ? `${lettering}, ${title}` : title.replace(`${name}, ${height}`, lettering);
}

/** The groups of a layer, each with a name that says all that its drawing shows. */
export function withTitles(worked: Worked, shapes: readonly Shape[]): readonly Shape[] {
  const locked = lockedThings(worked);
  return shapes.map((shape) => {
    if (shape.kind !== 'group') return shape;
    const title = titleOf(worked, shape.subject, shape.title);
    const held = locked.has(shape.subject) ? `, ${HELD_FAST}` : '';
    return { ...shape, title: withLettering(title, letteringOf(shape.shapes)) + held };
  });
}
