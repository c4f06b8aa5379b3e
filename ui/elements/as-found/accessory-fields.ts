import { html, type TemplateResult } from 'lit';
import type { Point } from '#model/installation.ts';
import { setPointFact } from '../../edits/points.ts';
import { send } from '../../job-events.ts';
import { jointTakes } from '../joint-takes.ts';
import { edits } from './fact-fields.ts';
import { flexOutletChoices, flexOutletSaid, flexOutletUnsaid, withFlexOutlet } from './flex-outlet.ts';
import { jointKinds, pointFeatures } from './found-words.ts';

type Unit = NonNullable<Point['unit']>;
type PointJoint = NonNullable<Point['joint']>;
type Module = NonNullable<Point['modules']>[number];

/** Fuses that fused connection units take, A. Source: BS 1362 (from memory). */
const fuses = [3, 5, 13].map((ratingA) => ({ value: String(ratingA), label: `${ratingA} A` }));

/** The ticks of what an accessory has besides its kind. */
export function featureFields(point: Point): TemplateResult {
  // What is fitted new has a finish in place of this.
  const isTold = ({ value }: { readonly value: Point['features'][number] }): boolean =>
    value !== 'metal' || point.status !== 'wanted' || point.features.includes('metal');
  return html`<div class="ticks">${pointFeatures.filter(isTold).map(
    ({ value, label }) =>
      html`<tick-field
        .label=${label}
        .value=${point.features.includes(value)}
        @field-change=${edits<boolean>((has) =>
          setPointFact(
            point,
            'features',
            has ? [...point.features, value] : point.features.filter((feature) => feature !== value),
          ),
        )}
      ></tick-field>`,
  )}</div>`;
}

/** What belongs to the kind of a point alone: a fused unit's fuse, a joint's terminals, a grid's modules. */
export function fieldsOfKind(point: Point, points: readonly Point[]): TemplateResult {
  if (point.kind === 'fused-unit') return unitFields(point);
  if (point.kind === 'joint') return jointFields(point);
  return point.kind === 'grid' ? gridFields(point, points) : html``;
}

/** A fused unit of which nothing is recorded is taken to be switched. Common practice, no source. */
const unitOf = ({ unit }: Point): Unit => unit ?? { switched: true };

function unitFields(point: Point): TemplateResult {
  const unit = unitOf(point);
  const put = (facts: Partial<Unit>) => setPointFact(point, 'unit', { ...unit, ...facts });
  const { fuseA: _fuse, ...withoutFuse } = unit;
  const tick = (label: string, value: boolean, made: (has: boolean) => Partial<Unit>): TemplateResult =>
    html`<tick-field .label=${label} .value=${value} @field-change=${edits<boolean>((has) => put(made(has)))}></tick-field>`;
  return html`<choice-field
      label="Fuse"
      .empty=${point.status === 'wanted' ? 'Automatic, from the load' : 'Not known'}
      .options=${fusesWith(unit.fuseA)}
      .value=${unit.fuseA === undefined ? null : String(unit.fuseA)}
      @field-change=${edits<string | null>((fuse) =>
        fuse === null ? setPointFact(point, 'unit', withoutFuse) : put({ fuseA: Number(fuse) }),
      )}
    ></choice-field>
    <choice-field
      label="Flex outlet in its plate"
      .empty=${flexOutletUnsaid(point)}
      .options=${flexOutletChoices}
      .value=${flexOutletSaid(unit)}
      @field-change=${edits<string | null>((said) => setPointFact(point, 'unit', withFlexOutlet(unit, said)))}
    ></choice-field>
    <div class="ticks">${tick('Switched', unit.switched, (switched) => ({ switched }))}
    ${tick('Neon', unit.neon === true, (neon) => ({ neon }))}
    ${tick('RCD in it', unit.rcd === true, (rcd) => ({ rcd }))}</div>`;
}

/** The fuses to choose from, the one that is there among them. */
const fusesWith = (fuseA: number | undefined) =>
  fuseA === undefined || fuses.some(({ value }) => value === String(fuseA))
    ? fuses
    : [{ value: String(fuseA), label: `${fuseA} A` }, ...fuses];

/** A joint but for what its maker says of it, which is of that one make. */
function withoutSheet(joint: PointJoint | undefined): Partial<PointJoint> {
  const { takes: _, ...rest } = joint ?? {};
  return rest;
}

function jointFields(point: Point): TemplateResult {
  const { joint } = point;
  const kind = html`<choice-field
    label="Terminals of the joint"
    .options=${jointKinds}
    .value=${joint?.kind ?? null}
    @field-change=${edits<PointJoint['kind'] | null>((value) =>
      setPointFact(
        point,
        'joint',
        value === null ? null : { ratingA: 32, accessible: true, ...withoutSheet(joint), kind: value },
      ),
    )}
  ></choice-field>`;
  if (joint === undefined) return kind;
  const put = (facts: Partial<PointJoint>) => setPointFact(point, 'joint', { ...joint, ...facts });
  return html`${kind}
    <number-field
      label="Rated at"
      unit="A"
      .min=${1}
      .max=${10_000}
      .value=${joint.ratingA}
      @field-change=${edits<number | null>((ratingA) => (ratingA === null ? null : put({ ratingA })))}
    ></number-field>
    <tick-field
      label="It can be reached"
      .value=${joint.accessible}
      @field-change=${edits<boolean>((accessible) => put({ accessible }))}
    ></tick-field>
    ${jointTakes(joint, (next, from) => {
      if (from !== null) send(from, 'job-edit', setPointFact(point, 'joint', next));
    })}`;
}

function gridFields(point: Point, points: readonly Point[]): TemplateResult {
  const modules = point.modules ?? [];
  const putAll = (next: readonly Module[]) =>
    setPointFact(point, 'modules', next.length === 0 ? null : [...next]);
  const add = (event: Event): void => {
    if (event.currentTarget !== null)
      send(event.currentTarget, 'job-edit', putAll([...modules, { kind: `Switch ${modules.length + 1}` }]));
  };
  return html`<h4>Modules of the grid</h4>
    ${modules.map((module, index) =>
      moduleFields({
        module,
        number: index + 1,
        fed: points.filter(({ id }) => id !== point.id),
        put: (next) =>
          putAll(
            next === null
              ? modules.filter((_, at) => at !== index)
              : modules.map((each, at) => (at === index ? next : each)),
          ),
      }),
    )}
    <div class="buttons"><button class="small" @click=${add}>Add a module</button></div>`;
}

interface ModuleFields {
  readonly module: Module;
  readonly number: number;
  readonly fed: readonly Point[];
  /** Null takes the module out. */
  readonly put: (module: Module | null) => ReturnType<typeof setPointFact>;
}

function moduleFields({ module, number, fed, put }: ModuleFields): TemplateResult {
  const { feeds: _feeds, ...withoutFeeds } = module;
  const { fuseA: _fuse, ...withoutFuse } = module;
  return html`<text-field
      .label=${`Module ${number}`}
      .value=${module.kind}
      @field-change=${edits<string>((kind) => put(kind.trim() === '' ? null : { ...module, kind }))}
      help="Emptied, the module goes."
    ></text-field>
    <div class="pair">
      <choice-field
        .label=${`Module ${number} feeds`}
        .empty=${'Nothing recorded'}
        .options=${fed.map(({ id, label }) => ({ value: id, label }))}
        .value=${module.feeds ?? null}
        @field-change=${edits<string | null>((feeds) => put(feeds === null ? withoutFeeds : { ...module, feeds }))}
      ></choice-field>
      <choice-field
        .label=${`Fuse of module ${number}`}
        .empty=${'None'}
        .options=${fusesWith(module.fuseA)}
        .value=${module.fuseA === undefined ? null : String(module.fuseA)}
        @field-change=${edits<string | null>((fuse) => put(fuse === null ? withoutFuse : { ...module, fuseA: Number(fuse) }))}
      ></choice-field>
    </div>`;
}

/** What hangs on a point and draws current: watts, what it is, and whether it is fixed there. */
export function loadFields(point: Point): TemplateResult {
  const { load } = point;
  // What is wired in by a fused unit or an outlet for flex stays there; a plug may be pulled. Common practice, no source.
  const isFixed = !point.kind.startsWith('socket');
  return html`<div class="pair">
      <number-field
        label="Load"
        unit="W"
        .min=${0}
        .max=${100_000}
        .value=${load?.watts ?? null}
        @field-change=${edits<number | null>((watts) =>
          setPointFact(point, 'load', watts === null ? null : { use: '', fixed: isFixed, ...load, watts }),
        )}
      ></number-field>
      <text-field
        label="Appliance"
        .disabled=${load === undefined}
        .help=${load === undefined ? 'Enter its load in watts first' : ''}
        .value=${load?.use ?? ''}
        @field-change=${edits<string>((use) => (load === undefined ? null : setPointFact(point, 'load', { ...load, use })))}
      ></text-field>
    </div>
    <tick-field
      label="Hard-wired"
      .disabled=${load === undefined}
      .help=${load === undefined ? 'Enter its load in watts first' : ''}
      .value=${load?.fixed ?? isFixed}
      @field-change=${edits<boolean>((fixed) => (load === undefined ? null : setPointFact(point, 'load', { ...load, fixed })))}
    ></tick-field>`;
}
