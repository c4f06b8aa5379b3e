import { html, type TemplateResult } from 'lit';
import type { LabelOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Joint } from '#model/installation.ts';
import type { Scheme, Tap } from '#model/scheme.ts';
import { hiddenJoint } from '../../edits/join-point.ts';
import { sourceLegs, sourcePoints } from '../../edits/join-sources.ts';
import { connectionOf, joinedBy } from '../../edits/joined-by.ts';
import { pointsBehind } from '../../edits/points-behind.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { jointTakes } from '../joint-takes.ts';
import { legWords, sourceWords } from './leg-words.ts';

const jointKinds = [
  { value: 'maintenance-free', label: 'Maintenance-free' },
  { value: 'lever', label: 'Lever, in an enclosure' },
  { value: 'screw', label: 'Screw' },
  { value: 'crimp', label: 'Crimp' },
] as const;

/** What the fields of a tap need to know. */
export interface TapContext {
  /** The house as found. */
  readonly worked: Worked;
  readonly scheme: Scheme;
  /** The point that is joined on. */
  readonly pointId: string;
  readonly labelOf: LabelOf;
  readonly changed: (tap: Tap) => void;
}

const keyOf = (tap: Tap): string => {
  if ('point' in tap) return `point ${tap.point}`;
  return 'leg' in tap ? `leg ${tap.leg}` : `origin ${tap.origin}`;
};

/** Wanted points that stand in the scheme already, as sources: a second outlet on a spur is a thing people do. */
function otherWanted({ worked, scheme, pointId }: TapContext): readonly { value: string; label: string }[] {
  const connection = connectionOf(scheme, pointId);
  const own = connection === null ? [pointId] : joinedBy(connection);
  // What hangs on the connection itself cannot feed it.
  const behind = pointsBehind(scheme, own);
  return worked.job.points
    .filter(({ id, status }) => status === 'wanted' && !own.includes(id) && !behind.has(id))
    .map(({ id, label }) => ({ value: `point ${id}`, label: `${label}, new: in turn after it` }));
}

function tapFor(context: TapContext, key: string): Tap | null {
  const [kind, id = ''] = key.split(' ');
  if (kind === 'point') return { point: id };
  if (kind === 'origin') return { origin: id };
  const leg = sourceLegs(context.worked, context.pointId).find(({ legId }) => legId === id);
  return leg === undefined ? null : { leg: id, alongMm: leg.alongMm, joint: hiddenJoint };
}

/** Where a new cable is joined on: a point, a leg cut by a joint, or the board. */
export function tapFields(context: TapContext, tap: Tap): TemplateResult {
  const { worked, scheme, pointId, labelOf } = context;
  const own = connectionOf(scheme, pointId);
  // Its own cable takes up no place that another would need.
  const others = { ...scheme, connections: scheme.connections.filter((one) => one !== own) };
  const options = [
    ...sourcePoints(worked, others, pointId).map((source) => ({
      value: `point ${source.pointId}`,
      label: sourceWords(source, labelOf),
    })),
    ...sourceLegs(worked, pointId).map((leg) => ({
      value: `leg ${leg.legId}`,
      label: `A joint in ${legWords(leg, labelOf)}`,
    })),
    ...worked.job.circuits.map(({ id, name }) => ({ value: `origin ${id}`, label: `The board: ${name}` })),
    ...otherWanted(context),
  ];
  return html`<choice-field
      class="wide"
      label="Joined on at"
      .value=${keyOf(tap)}
      .options=${options}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => {
        event.stopPropagation();
        const chosen = tapFor(context, event.detail.value);
        if (chosen !== null) context.changed(chosen);
      }}
    ></choice-field>
    ${
      'leg' in tap
        ? jointFields(
            { joint: tap.joint ?? hiddenJoint, alongMm: tap.alongMm, from: legStart(context, tap.leg) },
            ({ joint, alongMm }) => context.changed({ ...tap, joint, alongMm }),
          )
        : ''
    }`;
}

/** The end of a leg that distances along it are measured from, as people know it. */
export function legStart({ worked, labelOf }: Pick<TapContext, 'worked' | 'labelOf'>, legId: string): string {
  const from = worked.job.legs.find(({ id }) => id === legId)?.from;
  if (from === undefined) return 'its start';
  return 'point' in from ? labelOf(from.point) : 'the board';
}

/** A joint at a distance along a leg. */
export interface JointAt {
  readonly joint: Joint;
  readonly alongMm: number;
}

/** The joint's place along its leg, its make, and whether it can be got at. */
export function jointFields(
  { joint, alongMm, from }: JointAt & { readonly from: string },
  changed: (at: JointAt) => void,
): TemplateResult {
  // A place in the house is of the cut that it was told for: another distance is another place.
  const { place: _place, ...unplaced } = joint;
  return html`<number-field
      .label=${`Cable from ${from} to the cut`}
      unit="mm"
      .value=${alongMm}
      .min=${0}
      .max=${1_000_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        if (event.detail.value !== null) changed({ joint: unplaced, alongMm: event.detail.value });
      }}
    ></number-field>
    <choice-field
      label="Joint"
      .value=${joint.kind}
      .options=${jointKinds}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<Joint['kind']>>) => {
        event.stopPropagation();
        // A sheet is of the one make.
        const { takes: _sheet, ...other } = joint;
        changed({ joint: { ...other, kind: event.detail.value }, alongMm });
      }}
    ></choice-field>
    <number-field
      label="Rated"
      unit="A"
      .value=${joint.ratingA}
      .min=${1}
      .max=${100}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        if (event.detail.value !== null)
          changed({ joint: { ...joint, ratingA: event.detail.value }, alongMm });
      }}
    ></number-field>
    <tick-field
      label="Can be got at later"
      .value=${joint.accessible}
      @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
        event.stopPropagation();
        changed({ joint: { ...joint, accessible: event.detail.value }, alongMm });
      }}
    ></tick-field>
    ${jointTakes(joint, (next) => changed({ joint: next, alongMm }))}`;
}
