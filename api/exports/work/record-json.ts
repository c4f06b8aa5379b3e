import { ENGINE_VERSION } from '#engine/engine-version.ts';
import { type RecordOfPapers, recordOf } from './record-of.ts';

/** The record as JSON text, for programs that fill in forms: every field with where it is from; keys in a fixed order. */
export function recordJson(request: RecordOfPapers): string {
  const { demoNote } = request.papers;
  return `${JSON.stringify({ ...recordOf(request), demoNote, engine: ENGINE_VERSION }, null, 2)}\n`;
}
