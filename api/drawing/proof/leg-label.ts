import { textWidthMm } from '../label-placer.ts';
import type { CircuitPicture, PictureLeg } from './circuit-picture.ts';
import { ampsWords, lengthWords, shareWords } from './proof-words.ts';

/** Height of the lettering of cables and of names, units of the scene: 13 and 14 px on a screen. */
export const LABEL_SIZE = 2.6;
export const NAME_SIZE = 2.8;
/** From one line of lettering to the next. */
export const LINE_PITCH = 3.3;

/** A line of a label; `strong` for the word of the worst leg. */
export interface LabelLine {
  readonly text: string;
  readonly strong: boolean;
}

/** On how many lines a cable's label stands: in one, in two, or one figure a line. */
export type LabelForm = 1 | 2 | 3;

const plain = (text: string): LabelLine => ({ text, strong: false });

/** True where a cable carries more than it may. */
export const isOverloaded = ({ share }: PictureLeg): boolean => share !== null && share > 1;

/** What stands beside a cable: current, share of Iz and length; its state in a word where it is new, open or the worst. */
export function legLabel(leg: PictureLeg, form: LabelForm): readonly LabelLine[] {
  const words = [
    ...(leg.isNew ? ['new'] : []),
    ...(leg.isOpen
      ? ['open']
      : [ampsWords(leg.currentA), ...(leg.share === null ? [] : [shareWords(leg.share)])]),
  ];
  const length = lengthWords(leg.lengthMm, leg.isMeasured);
  const state = [...(leg.isWorst ? ['most loaded'] : []), ...(isOverloaded(leg) ? ['over its Iz'] : [])];
  const told = form === 3 ? state.flatMap((text) => text.split(/ (?!Iz)/)) : state;
  const figures =
    form === 1
      ? [[...words, length].join(' · ')]
      : form === 2
        ? [words.join(' · '), length]
        : [...words, ...length.split(/(?<=about) /)];
  return [...told.map((text) => ({ text, strong: true })), ...figures.map(plain)];
}

/** How wide the widest line is. */
export const labelWidth = (lines: readonly LabelLine[]): number =>
  Math.max(0, ...lines.map(({ text }) => textWidthMm(text, LABEL_SIZE)));

/** A cable in a sentence, for who hears it, with its lettering as it is drawn. */
export function legTitle(
  { nodes }: CircuitPicture,
  leg: PictureLeg,
  label: readonly LabelLine[] = legLabel(leg, 1),
): string {
  const [a, b] = leg.ends.map((end) => nodes[end]?.label ?? '');
  const may = leg.izA === null ? 'Iz not known' : `it may carry ${Math.round(leg.izA * 10) / 10} A`;
  const lettering = label.map(({ text }) => text).join(' ');
  return `${a} to ${b}, ${leg.isNew ? 'new cable' : 'cable as found'}: ${lettering}; ${may}`;
}
