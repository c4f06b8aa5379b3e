import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { textWidthMm } from '../label-placer.ts';
import { wrapped } from '../plan/text-rows.ts';
import { type Shape, words } from '../scene.ts';
import { type CircuitPicture, nodeTitle } from './circuit-picture.ts';
import { LABEL_SIZE, legTitle, NAME_SIZE } from './leg-label.ts';
import { pictureTree } from './picture-tree.ts';

const PITCH = 4;

/** Where notes stand, units of the scene. */
interface NoteBox {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
}

interface Notes {
  readonly shapes: readonly Shape[];
  readonly heightMm: number;
}

interface Word {
  readonly text: string;
  readonly subject: string;
  readonly title: string;
}

/** What a picture cannot show: cables that close a loop which is no ring, and what no recorded cable joins to the board. */
export function noteRows(picture: CircuitPicture, box: NoteBox): Notes {
  const { closing, unreached } = pictureTree(picture);
  const shapes: Shape[] = [];
  let y = box.topMm;
  const add = (heading: string, all: readonly Word[]): void => {
    if (all.length === 0) return;
    for (const row of wrapped(heading, box.widthMm, LABEL_SIZE)) {
      shapes.push(words('text-soft', sheetPoint(box.leftMm, y), row, { sizeMm: LABEL_SIZE }));
      y += PITCH;
    }
    y = rowOfWords(all, box, y + 0.6, shapes) + PITCH + 2;
  };
  add(
    'Also joined, so that it is neither a ring nor a tree:',
    closing.flatMap((leg) => {
      const drawn = picture.legs[leg];
      if (drawn === undefined) return [];
      const [a, b] = drawn.ends.map((end) => picture.nodes[end]?.label ?? '');
      return [{ text: `${a} to ${b}`, subject: drawn.subject, title: legTitle(picture, drawn) }];
    }),
  );
  add(
    'No recorded cable joins these to the board:',
    unreached
      .toSorted((a, b) => inLabelOrder(picture, a, b))
      .flatMap((node) => {
        const drawn = picture.nodes[node];
        if (drawn === undefined) return [];
        return [
          {
            text: drawn.label,
            subject: drawn.subject,
            title: `${nodeTitle(drawn, drawn.label)}, no recorded cable to the board`,
          },
        ];
      }),
  );
  return { shapes, heightMm: y - box.topMm };
}

/** P2 before P10: by the letters of the name, then by its number. */
function inLabelOrder({ nodes }: CircuitPicture, a: number, b: number): number {
  const [one, other] = [nodes[a]?.label ?? '', nodes[b]?.label ?? ''];
  const letters = (label: string): string => label.replace(/\d+/g, '');
  const figure = (label: string): number => Number(/\d+/.exec(label)?.[0] ?? 0);
  if (letters(one) !== letters(other)) return letters(one) < letters(other) ? -1 : 1;
  return figure(one) - figure(other) || a - b;
}

/** Words side by side, each a thing that can be touched; gives the height of the last row. */
function rowOfWords(all: readonly Word[], box: NoteBox, top: number, shapes: Shape[]): number {
  let [x, y] = [box.leftMm, top];
  for (const { text, subject, title } of all) {
    const width = textWidthMm(text, NAME_SIZE);
    if (x > box.leftMm && x + width > box.leftMm + box.widthMm) [x, y] = [box.leftMm, y + PITCH + 0.6];
    const name = words('text', sheetPoint(x, y), text, { sizeMm: NAME_SIZE, strong: true });
    shapes.push({ kind: 'group', subject, title, shapes: [name] });
    x += width + 3;
  }
  return y;
}
