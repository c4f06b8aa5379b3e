import type { Containment } from '#model/cable.ts';
import type { Segment } from '../ways/run.ts';

/** What a new stretch lies in; of one that goes into channel found, nothing that is bought. */
export function containmentOf({ containment, inChannelOf, medium }: Segment): Containment {
  if (inChannelOf !== undefined) return 'none';
  if (containment !== 'none') return containment;
  return medium === 'surface-channel' ? 'channel' : 'none';
}
