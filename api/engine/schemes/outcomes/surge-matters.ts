import { surgeIsOpen, withSurgeWanted } from '../../connections/surge-device.ts';
import type { Worked } from '../../connections/worked.ts';
import type { OpenMatter } from './open-matter.ts';

/** The one question of surge protection where a board is exchanged and nobody has asked the owner. */
export function surgeMatters(worked: Worked): readonly OpenMatter[] {
  if (!surgeIsOpen(worked)) return [];
  const boards = (worked.scheme?.remedies ?? []).flatMap(({ kind, at }) =>
    kind === 'new-board' && at !== undefined ? [at] : [],
  );
  return [
    {
      id: 'surge/supply',
      kind: 'surge',
      subjects: boards,
      words: 'Does the owner want surge protection in the new board?',
      outcomes: [
        { id: 'none', words: 'No: none is fitted', change: {} },
        { id: 'wanted', words: 'Yes: a surge device goes in', change: { job: withSurgeWanted } },
      ],
    },
  ];
}
