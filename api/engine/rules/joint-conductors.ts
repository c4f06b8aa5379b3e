import type { Joint } from '#model/installation.ts';
import { jointFor, takesAll } from '../connections/joint-capacity.ts';
import type { CableJoint, JointCapacity } from '../connections/things.ts';
import { counted } from './counted.ts';
import { type CheckResult, rule } from './rule.ts';
import { rounded } from './wiring.ts';

type Message =
  | 'within'
  | 'overUsual'
  | 'overUsualNoOther'
  | 'overSheet'
  | 'overSheetNoOther'
  | 'sizeUnknown'
  | 'makeUnknown';

/** What joints are called within a sentence. */
const jointNames: Readonly<Record<Joint['kind'], string>> = {
  'maintenance-free': 'maintenance-free box',
  lever: 'set of lever connectors in an enclosure',
  screw: 'screw box of 60 A that can be got at',
  crimp: 'crimped joint',
};

/** A joint that the job chooses takes the conductors that meet in it, by number and by area. */
export const jointConductors = rule<Message>({
  id: 'JN3',
  title: 'Conductors in joints',
  source:
    'BS 7671 526.2; makers’ ranges of maintenance-free boxes (trade press), other joints from memory: the maker’s sheet wins',
  messages: {
    within: 'The joint holds {conductors}, the largest of {actual} mm²; it takes {takes}.',
    overUsual:
      'The joint would hold {conductors}, the largest of {actual} mm²; one of its kind usually takes {takes}.',
    overUsualNoOther:
      'The joint would hold {conductors}, the largest of {actual} mm²; one of its kind usually takes {takes}.',
    overSheet:
      'The joint would hold {conductors}, the largest of {actual} mm²; by its maker it takes {takes}.',
    overSheetNoOther:
      'The joint would hold {conductors}, the largest of {actual} mm²; by its maker it takes {takes}.',
    sizeUnknown:
      'The size of a cable in the joint is not known, so that it takes it ({takes}) is not proved.',
    makeUnknown:
      'Nobody has looked what the joint found takes; with the new ones it would hold {conductors}.',
  },
  remedies: {
    overUsual: 'Choose a larger joint, a {other}; or write down what the maker’s sheet of this one allows.',
    overUsualNoOther:
      'Join at terminals, or at two joints; or write down what the maker’s sheet of this one allows.',
    overSheet: 'Choose a larger joint: a {other}.',
    overSheetNoOther: 'Join at terminals, or at two joints.',
    sizeUnknown: 'Look at the cable.',
    makeUnknown: 'Open it, dead and proved so; read its make and count.',
  },
  couldFail: true,
  check: (facts) =>
    facts.things.joints
      .filter(({ circuitId }) => facts.circuitIds.includes(circuitId))
      .flatMap((joint) => judged(joint)),
});

function judged(joint: CableJoint): readonly CheckResult<Message>[] {
  const { takes, newCables, source, cables, conductorAreaMm2 } = joint;
  const isTouched = newCables > 0;
  // What this stage chose fits by its making.
  if (source === 'derived') return [];
  const head = { subjectId: joint.id, origin: isTouched ? ('scheme' as const) : ('found' as const) };
  const conductors = counted(cables, 'conductor');
  if (takes === null)
    return isTouched
      ? [{ ...head, outcome: 'not-proven', messageId: 'makeUnknown', values: { conductors } }]
      : [];
  const { actual, ...values } = { conductors, actual: rounded(conductorAreaMm2), takes: takesWords(takes) };
  const told = { ...head, limit: values.takes, values: { ...values, actual } };
  if (!takesAll(takes, joint)) return [{ ...told, actual, ...over(joint, takes, told.values) }];
  // What the scheme leaves alone is told only where it is wrong.
  if (!isTouched) return [];
  return joint.areaMm2 === null
    ? [{ ...told, outcome: 'not-proven', messageId: 'sizeUnknown' }]
    : [{ ...told, actual, outcome: 'passes', messageId: 'within' }];
}

/** Past what a sheet allows it fails; past what is only usual, somebody has to read the sheet. */
function over(
  joint: CableJoint,
  { isFromSheet }: JointCapacity,
  values: Readonly<Record<string, string | number>>,
): Pick<CheckResult<Message>, 'outcome' | 'messageId' | 'values'> {
  const other = jointFor(joint);
  const outcome = isFromSheet ? ('fails' as const) : ('decide' as const);
  if (other === null)
    return { outcome, messageId: isFromSheet ? 'overSheetNoOther' : 'overUsualNoOther', values };
  return {
    outcome,
    messageId: isFromSheet ? 'overSheet' : 'overUsual',
    values: { ...values, other: jointNames[other.kind] },
  };
}

function takesWords({ cables, conductorMm2, areaMm2 }: JointCapacity): string {
  const number = cables === null ? 'any number of conductors' : counted(cables, 'conductor');
  const together = areaMm2 === null ? '' : ` and ${areaMm2} mm² together`;
  return `${number} up to ${conductorMm2} mm²${together}`;
}
