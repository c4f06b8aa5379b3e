import type { WorkRecord } from '#engine/work/record/record-shape.ts';
import { workRecord } from '#engine/work/record/work-record.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from '../papers.ts';

/** What a record is made from. */
export interface RecordOfPapers {
  readonly papers: Pick<Papers, 'drawn' | 'shown' | 'state' | 'demoNote'>;
  readonly library: Library;
}

/** The record of the scheme that papers show, for the firm whose library it is. */
export const recordOf = ({ papers, library }: RecordOfPapers): WorkRecord =>
  workRecord({
    estimate: papers.drawn,
    scheme: papers.shown,
    firm: library.firm,
    state: papers.state,
  });
