import type { Face, Wall } from '#model/building.ts';
import type { Point } from '#model/installation.ts';
import type { BoxBuild } from './things.ts';

/**
 * What kind of box goes into a wall. A surface mounting is asked for by the point. Otherwise the wall tells:
 * masonry takes steel, studs and linings on battens a dry-lining box. On dot and dab a box said to be `flush` is steel,
 * plugged to the block with the board as packing; else it is a dry-lining box and the block is chopped out
 * locally behind it. Lath and plaster holds no dry-lining lugs: a steel box on a bridging batten. Where no
 * wall is known, `dry-lined` speaks for itself and the rest counts as masonry, the dearer guess.
 * Source: common practice.
 */
export function boxBuild(mount: Point['mount'], wall: Wall | null, face: Face | null): BoxBuild {
  if (mount === 'surface') return 'surface';
  if (mount === 'dry-lined') return 'dry-lining';
  if (face?.finish === 'lath-and-plaster') return 'steel';
  if (wall?.core === 'timber-stud' || wall?.core === 'metal-stud') return 'dry-lining';
  if (face?.lining === 'battens') return 'dry-lining';
  if (face?.lining === 'dot-and-dab') return mount === 'flush' ? 'steel' : 'dry-lining';
  return 'steel';
}
