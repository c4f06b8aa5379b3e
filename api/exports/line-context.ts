import type { LabelOf } from '#drawing/label-of.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Library } from '#model/library.ts';

/** What the lines of a scheme's bill and labour are told by, whatever the format. */
export interface LineContext {
  readonly scheme: SchemeEstimate;
  /** The library that the scheme was priced with. */
  readonly library: Library;
  readonly labelOf: LabelOf;
}
