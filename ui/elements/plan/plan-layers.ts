import { type SVGTemplateResult, svg } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { overlapMm2, type Rectangle } from '#drawing/label-placer.ts';
import { letteringBox } from '#drawing/lettering-box.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { symbolExtent, type Target } from './group-extent.ts';
import { shapeTemplate } from './shape-template.ts';
import { FINGER, type Group, markTemplate, thingTemplate, wallTemplate } from './thing-template.ts';

/** What is chosen, lit, moved and come to by keyboard at this moment. */
export interface Looks {
  readonly chosen: string | null;
  readonly lit: ReadonlySet<string>;
  readonly movable: ReadonlySet<string>;
  readonly movingId: string | null;
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

/** Whether a shape is lettering that others are written over. */
const isWrittenOver = (shape: Shape, written: readonly Rectangle[]): boolean =>
  shape.kind === 'text' && written.some((box) => overlapMm2(box, letteringBox(shape)) > 0);

/** Shapes without the lettering that others are written over. */
const clearOf = <S extends Shape>(shapes: readonly S[], written: readonly Rectangle[]): readonly S[] =>
  shapes.some((shape) => isWrittenOver(shape, written))
    ? shapes.filter((shape) => !isWrittenOver(shape, written))
    : shapes;

const isThings = (name: string): boolean => name === 'points' || name === 'cables';

function shapesTemplate(name: string, shapes: readonly Shape[], looks: Looks): unknown {
  if (name === 'findings' || name === 'locks') return groupsOf(shapes).map(markTemplate);
  if (name === 'walls')
    return groupsOf(shapes).map((group) => wallTemplate(group, looks.lit.has(group.subject)));
  if (!isThings(name)) return clearOf(shapes, looks.written).map(shapeTemplate);
  return repeat(
    groupsOf(shapes),
    ({ subject }) => subject,
    (group) =>
      thingTemplate(
        { ...group, shapes: clearOf(group.shapes, looks.written) },
        {
          chosen: looks.chosen === group.subject,
          lit: looks.lit.has(group.subject),
          movable: looks.movable.has(group.subject),
          moving: looks.movingId === group.subject,
          reached: looks.reached === group.subject,
        },
      ),
  );
}

/** A scene's layers from back to front, its things as what they are at this moment. */
export const layersTemplate = (scene: Scene, looks: Looks): SVGTemplateResult[] =>
  scene.layers.map(({ name, shapes }) => svg`<g class=${name}>${shapesTemplate(name, shapes, looks)}</g>`);
