import { connectionsTold } from '#drawing/connection-words.ts';
import type { LabelOf } from '#drawing/label-of.ts';
import type { SchemeKind } from '#engine/schemes/search/found-schemes.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { plainSchemeName } from '../edits/scheme-names.ts';

/** What a found scheme is, by how it joins the wanted points. */
export const kindWords: Readonly<Record<SchemeKind, string>> = {
  spurs: 'Spurs alone',
  'fused-branch': 'One fused branch',
  'ring-extension': 'The ring or a radial carried on',
  'new-radial': 'A new radial',
  mend: 'A spur that is there, mended',
  mixed: 'Several kinds together',
};

/** What a scheme is made of, in one line. */
export function madeOf(
  {
    connections,
    remedies,
  }: { readonly connections: readonly Connection[]; readonly remedies: readonly Remedy[] },
  labelOf: LabelOf,
): string {
  const words = connectionsTold(connections, labelOf).map((told) => told.words);
  const extras = plainSchemeName({ connections: [], remedies });
  const withExtras = `with ${extras.charAt(0).toLowerCase()}${extras.slice(1)}`;
  return [...words, ...(remedies.length === 0 ? [] : [withExtras])].join(' · ');
}
