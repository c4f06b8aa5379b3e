import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';

/** An edit that can be marked by how sure its fact is, in one step with it. */
export const markable = (edit: JobEdit, sure: (certainty: Certainty) => JobEdit): JobEdit => ({
  ...edit,
  marked: (certainty) => sure(certainty).change,
});

/** An entry that can be marked; what is taken away has no mark. */
export const markableEntry = (
  edit: JobEdit,
  value: unknown,
  sure: (certainty: Certainty) => JobEdit,
): JobEdit => (value === null ? edit : markable(edit, sure));

/** The edit with its fact marked by what a person goes by; what cannot be marked stays as it is. */
export function markedBy({ marked, ...edit }: JobEdit, certainty: Certainty): JobEdit {
  if (marked === undefined) return edit;
  const mark = marked(certainty);
  return {
    ...edit,
    change: (job) => {
      edit.change(job);
      mark(job);
    },
  };
}
