import { type SVGTemplateResult, svg } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import { overlapMm2, type Rectangle } from '#drawing/label-placer.ts';
import { letteringBox } from '#drawing/lettering-box.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import type { MovedParts } from '../../house/moved-parts.ts';
import { symbolExtent, type Target } from './group-extent.ts';
import { shapeTemplate } from './shape-template.ts';
import {
  FINGER,
  type Group,
  markTemplate,
  type ThingState,
  thingTemplate,
  wallTemplate,
} from './thing-template.ts';

/** What is chosen, lit, moved and come to by keyboard at this moment. */
export interface Looks {
  readonly chosen: string | null;
  readonly lit: ReadonlySet<string>;
  readonly movable: ReadonlySet<string>;
  readonly movingId: string | null;
  /** What the hand's own picture has where it would be. */
  readonly aside: MovedParts;
  readonly reached: string | null;
  /** Where the dimensions of a point that moves are written: other lettering gives way. */
  readonly written: readonly Rectangle[];
}

const groupsOf = (shapes: readonly Shape[]): readonly Group[] =>
  shapes.filter((shape): shape is Group => shape.kind === 'group');

const thingsOf = (scene: Scene | undefined, layer: string): readonly Group[] =>
  groupsOf(scene?.layers.find(({ name }) => name === layer)?.shapes ?? []);

/** Points, boards and joints first, then cables: the order in which the keyboard comes to them. */
export const thingsInOrder = (scene: Scene | undefined): readonly Group[] => [
  ...thingsOf(scene, 'points'),
  ...thingsOf(scene, 'cables'),
];

/** The one thing that the keyboard comes to: what it was at last, or the first; null where nothing is drawn. */
export function reachedIn(scene: Scene, before: string | null): string | null {
  const things = thingsInOrder(scene);
  const isThere = things.some(({ subject }) => subject === before);
  return isThere ? before : (things[0]?.subject ?? null);
}

/** How far off a symbol that cannot be moved is still meant, units of the scene. */
const NEAR = 1.4;

/** Whether something that is drawn is locked: then the mark is explained. */
export const hasLocks = (scene: Scene): boolean => thingsOf(scene, 'locks').length > 0;

/** The symbols that can be pointed at; those that may be moved from a finger's width away. */
export const targetsOf = (scene: Scene, movable: ReadonlySet<string>): readonly Target[] =>
  thingsOf(scene, 'points').flatMap(({ subject, shapes }) => {
    const extent = symbolExtent(shapes);
    return extent === null ? [] : [{ subject, extent, reach: movable.has(subject) ? FINGER / 2 : NEAR }];
  });

type Lettering = Extract<Shape, { readonly kind: 'text' }>;

/** Shapes of a scene stay as they are while a hand moves, and are asked at every movement. */
const boxes = new WeakMap<Lettering, Rectangle>();

function boxOf(shape: Lettering): Rectangle {
  const known = boxes.get(shape) ?? letteringBox(shape);
  boxes.set(shape, known);
  return known;
}

/** Whether a shape is lettering that others are written over. */
const isWrittenOver = (shape: Shape, written: readonly Rectangle[]): boolean =>
  shape.kind === 'text' && written.some((box) => overlapMm2(box, boxOf(shape)) > 0);

/** Where among shapes the lettering is that others are written over. */
const hiddenIn = (shapes: readonly Shape[], written: readonly Rectangle[]): readonly number[] =>
  written.length === 0 ? [] : shapes.flatMap((shape, i) => (isWrittenOver(shape, written) ? [i] : []));

const without = (shapes: readonly Shape[], hidden: readonly number[]): readonly Shape[] =>
  hidden.length === 0 ? shapes : shapes.filter((_, i) => !hidden.includes(i));

const isThings = (name: string): boolean => name === 'points' || name === 'cables';

/** How a thing stands; told as one word, it says whether it is drawn as before. */
function stateOf({ subject }: Group, looks: Looks): ThingState {
  return {
    chosen: looks.chosen === subject,
    lit: looks.lit.has(subject),
    movable: looks.movable.has(subject),
    moving: looks.movingId === subject,
    aside: looks.aside.points.has(subject),
    reached: looks.reached === subject,
  };
}

/** A thing, drawn anew only where its shapes, its state or what is written over it changed. */
function thing(group: Group, looks: Looks): unknown {
  const state = stateOf(group, looks);
  const hidden = hiddenIn(group.shapes, looks.written);
  return guard([group, ...Object.values(state), hidden.join()], () =>
    thingTemplate({ ...group, shapes: without(group.shapes, hidden) }, state),
  );
}

function shapesTemplate(name: string, shapes: readonly Shape[], looks: Looks): unknown {
  if (name === 'findings' || name === 'locks' || name === 'photos')
    return guard([shapes], () => groupsOf(shapes).map(markTemplate));
  if (name === 'walls')
    return guard([shapes, looks.lit, [...looks.aside.walls].join()], () =>
      groupsOf(shapes).map((group) =>
        wallTemplate(group, {
          lit: looks.lit.has(group.subject),
          aside: looks.aside.walls.has(group.subject),
        }),
      ),
    );
  if (isThings(name))
    return repeat(
      groupsOf(shapes),
      ({ subject }) => subject,
      (group) => thing(group, looks),
    );
  const hidden = hiddenIn(shapes, looks.written);
  return guard([shapes, hidden.join()], () => without(shapes, hidden).map(shapeTemplate));
}

/** A scene's layers from back to front, its things as what they are at this moment. */
export const layersTemplate = (scene: Scene, looks: Looks): SVGTemplateResult[] =>
  scene.layers.map(({ name, shapes }) => svg`<g class=${name}>${shapesTemplate(name, shapes, looks)}</g>`);
