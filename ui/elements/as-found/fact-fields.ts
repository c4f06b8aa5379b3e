import { html, type TemplateResult } from 'lit';
import type { Certainty, CertaintyByField } from '#model/primitives.ts';
import { markableEntry } from '../../edits/marked.ts';
import { type JobEdit, send } from '../../job-events.ts';
import '../fields/choice-field.ts';
import type { Choice } from '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import '../fields/tick-field.ts';

/** A thing with a fact of a known name, how sure it is, and the edits that change them. */
export interface FactsOf<K extends string, V, E = V | null> {
  readonly thing: { readonly [P in K]?: V | undefined };
  readonly set: (fact: K, value: E) => JobEdit;
  readonly certainty?: CertaintyByField | undefined;
  /** Absent: how sure these facts are is not recorded. */
  readonly sure?: (fact: K, certainty: Certainty) => JobEdit;
  /** How what is entered is marked where that is not by `sure`. */
  readonly mark?: (fact: K, certainty: Certainty) => JobEdit;
}

/** The edit of an entry, marked as the person knows it; what is taken away has no mark. */
function entered<K extends string, V, E>(facts: FactsOf<K, V, E>, fact: K, value: E): JobEdit {
  const { sure, mark = sure } = facts;
  const edit = facts.set(fact, value);
  return mark === undefined ? edit : markableEntry(edit, value, (certainty) => mark(fact, certainty));
}

/** What every field of a fact is told. */
interface FieldWords {
  readonly label: string;
  readonly help?: string;
}

/** Turns a field's event into an edit, sent from the field. */
export const edits =
  <V>(made: (value: V) => JobEdit | null) =>
  (event: CustomEvent<FieldChange<V>>): void => {
    event.stopPropagation();
    const edit = made(event.detail.value);
    if (event.currentTarget !== null && edit !== null) send(event.currentTarget, 'job-edit', edit);
  };

/** Turns a choice of certainty into an edit, sent from the field. */
export const certaintyEdits =
  (made: (certainty: Certainty) => JobEdit | null) =>
  (event: CustomEvent<{ readonly certainty: Certainty }>): void => {
    event.stopPropagation();
    const edit = made(event.detail.certainty);
    if (event.currentTarget !== null && edit !== null) send(event.currentTarget, 'job-edit', edit);
  };

/** How sure a fact is as its field shows it: nothing of one that is absent, seen where nobody said. */
function shownCertainty<K extends string, V, E>(facts: FactsOf<K, V, E>, fact: K): Certainty | null {
  if (facts.sure === undefined || facts.thing[fact] === undefined) return null;
  return facts.certainty?.[fact] ?? 'seen';
}

/** Where no edit records how sure a fact is, its field shows no certainty to be changed. */
const sureOf = <K extends string, V, E>(facts: FactsOf<K, V, E>, fact: K) =>
  certaintyEdits((certainty) => facts.sure?.(fact, certainty) ?? null);

interface NumberWords extends FieldWords {
  readonly unit: string;
  readonly min?: number;
  readonly max: number;
  readonly whole?: boolean;
  /** What one of the shown unit is in the file's. */
  readonly scale?: number;
}

/** A fact that is a number; emptied, the fact goes. */
export function numberFact<K extends string>(
  facts: NoInfer<FactsOf<K, number>>,
  fact: K,
  { label, help = '', unit, min = 0, max, whole = false, scale = 1 }: NumberWords,
): TemplateResult {
  const value = facts.thing[fact];
  return html`<number-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .unit=${unit}
    .min=${min}
    .max=${max}
    .whole=${whole}
    .value=${value === undefined ? null : value / scale}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<number | null>((shown) => entered(facts, fact, shown === null || scale === 1 ? shown : Math.round(shown * scale)))}
    @certainty-change=${sureOf(facts, fact)}
  ></number-field>`;
}

/** A fact that must be a number: emptied, it stays as it is. */
export function mustNumber<K extends string>(
  facts: NoInfer<FactsOf<K, number, number>>,
  fact: K,
  { label, help = '', unit, min = 0, max, whole = false }: NumberWords,
): TemplateResult {
  return html`<number-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .unit=${unit}
    .min=${min}
    .max=${max}
    .whole=${whole}
    .value=${facts.thing[fact] ?? null}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<number | null>((shown) => (shown === null ? null : entered(facts, fact, shown)))}
    @certainty-change=${sureOf(facts, fact)}
  ></number-field>`;
}

/** One of a choice, by a word of the file. */
export interface WordChoice<V extends string> extends Choice {
  readonly value: V;
}

interface ChoiceWords<V extends string> extends FieldWords {
  readonly options: readonly WordChoice<V>[];
  readonly empty?: string;
}

/** A fact that is one of several words; the empty choice takes it away. */
export function choiceFact<K extends string, V extends string>(
  facts: NoInfer<FactsOf<K, V>>,
  fact: K,
  { label, help = '', options, empty = 'Not known' }: ChoiceWords<V>,
): TemplateResult {
  return html`<choice-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .options=${options}
    .empty=${empty}
    .value=${facts.thing[fact] ?? null}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<string | null>((word) => entered(facts, fact, options.find(({ value }) => value === word)?.value ?? null))}
    @certainty-change=${sureOf(facts, fact)}
  ></choice-field>`;
}

/** A fact that must be one of several words. */
export function mustChoice<K extends string, V extends string>(
  facts: NoInfer<FactsOf<K, V, V>>,
  fact: K,
  { label, help = '', options }: Omit<ChoiceWords<V>, 'empty'>,
): TemplateResult {
  return html`<choice-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .options=${options}
    .empty=${null}
    .value=${facts.thing[fact] ?? null}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<string | null>((word) => {
      const known = options.find(({ value }) => value === word);
      return known === undefined ? null : entered(facts, fact, known.value);
    })}
    @certainty-change=${sureOf(facts, fact)}
  ></choice-field>`;
}

const yesOrNo = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const;

/** A fact that is yes, no or not known; a list, so that how sure it is has room beside it in a narrow form. */
export function yesNoFact<K extends string>(
  facts: NoInfer<FactsOf<K, boolean>>,
  fact: K,
  { label, help = '' }: FieldWords,
): TemplateResult {
  const value = facts.thing[fact];
  return html`<choice-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .options=${yesOrNo}
    .empty=${'Not known'}
    .value=${value === undefined ? null : value ? 'yes' : 'no'}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<string | null>((word) => entered(facts, fact, word === null ? null : word === 'yes'))}
    @certainty-change=${sureOf(facts, fact)}
  ></choice-field>`;
}

interface TextWords extends FieldWords {
  readonly kind?: 'text' | 'date';
  readonly multiline?: boolean;
}

/** A fact in people's own words; emptied, it goes. */
export function textFact<K extends string>(
  facts: NoInfer<FactsOf<K, string>>,
  fact: K,
  { label, help = '', kind = 'text', multiline = false }: TextWords,
): TemplateResult {
  return html`<text-field
    data-fact=${fact}
    .label=${label}
    .help=${help}
    .kind=${kind}
    .multiline=${multiline}
    .value=${facts.thing[fact] ?? ''}
    .certainty=${shownCertainty(facts, fact)}
    @field-change=${edits<string>((text) => entered(facts, fact, text.trim() === '' ? null : text))}
    @certainty-change=${sureOf(facts, fact)}
  ></text-field>`;
}

/** A text that has to be there: emptied, it stays as it is. */
export const mustText = (label: string, value: string, set: (text: string) => JobEdit): TemplateResult =>
  html`<text-field
    .label=${label}
    .value=${value}
    @field-change=${edits<string>((text) => (text.trim() === '' || text === value ? null : set(text)))}
  ></text-field>`;
