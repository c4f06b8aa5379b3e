import type { LitElement } from 'lit';

/** What a template is made of, as the library keeps it. */
interface Template {
  readonly strings: readonly string[];
  readonly values: readonly unknown[];
}

const isTemplate = (value: unknown): value is Template =>
  typeof value === 'object' && value !== null && 'strings' in value && 'values' in value;

/** An attribute, a property or a listener that a template sets: `.value`, `@click`, `label`. */
export interface Binding {
  readonly tag: string;
  readonly name: string;
  readonly value: unknown;
}

const boundName = /([.?@]?[\w-]+)="?$/;

/** The name of what a template's value is bound to; null where it is content. */
const nameBefore = (before: string): string | null =>
  before.lastIndexOf('<') > before.lastIndexOf('>') ? (boundName.exec(before)?.[1] ?? null) : null;

/** What an element renders, without a browser: no child element of its own is drawn. */
export const templateOf = (element: LitElement): unknown =>
  (element as unknown as { readonly render: () => unknown }).render();

/** All that a template sets on elements, in its order, those within it too. */
export function bindingsOf(value: unknown): readonly Binding[] {
  if (Array.isArray(value)) return value.flatMap(bindingsOf);
  if (!isTemplate(value)) return [];
  let seen = '';
  return value.values.flatMap((each, i): readonly Binding[] => {
    seen += value.strings[i] ?? '';
    const name = nameBefore(seen);
    if (name === null) return bindingsOf(each);
    const tag = /<([\w-]+)[^<]*$/.exec(seen)?.[1] ?? '';
    seen += 'value';
    return [{ tag, name, value: each }];
  });
}

/** The words that a template shows, tags left out, white space as one space. */
export function textOf(value: unknown): string {
  return rawOf(value)
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

function rawOf(value: unknown): string {
  if (Array.isArray(value)) return value.map(rawOf).join(' ');
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (!isTemplate(value)) return '';
  let raw = '';
  value.strings.forEach((words, i) => {
    raw += words;
    if (i < value.values.length) raw += nameBefore(raw) === null ? rawOf(value.values[i]) : 'value';
  });
  return raw;
}

/** The values set under a name on elements of a tag, in the template's order. */
export const bound = (value: unknown, tag: string, name: string): readonly unknown[] =>
  bindingsOf(value).flatMap((each) => (each.tag === tag && each.name === name ? [each.value] : []));

/** Sends an event to the listener of an element of a tag, as if that had sent it. */
export function tell(value: unknown, tag: string, event: Event): void {
  const [listener] = bound(value, tag, `@${event.type}`);
  if (typeof listener !== 'function') throw new Error(`No <${tag}> listens to ${event.type}.`);
  listener(event);
}

/** The details of the events of a name that an element sends while something is done. */
export function sentBy(element: LitElement, name: string, doing: () => void): readonly unknown[] {
  const details: unknown[] = [];
  const hear = (event: Event): void => {
    details.push((event as CustomEvent).detail);
  };
  element.addEventListener(name, hear);
  doing();
  element.removeEventListener(name, hear);
  return details;
}
