import { applianceIsolation } from './rules/appliance-isolation.ts';
import { arcFault } from './rules/arc-fault.ts';
import { areaServed } from './rules/area-served.ts';
import { asbestos } from './rules/asbestos.ts';
import { backToBackBoxes } from './rules/back-to-back-boxes.ts';
import { backToBackChases } from './rules/back-to-back-chases.ts';
import { bathSocketDistance } from './rules/bath-socket-distance.ts';
import { bathZones } from './rules/bath-zones.ts';
import { bathroomRcd } from './rules/bathroom-rcd.ts';
import { boardEnclosure } from './rules/board-enclosure.ts';
import { bondSize } from './rules/bond-size.ts';
import { boxDepth } from './rules/box-depth.ts';
import { boxInPartyWall } from './rules/box-in-party-wall.ts';
import { boxInThinWall } from './rules/box-in-thin-wall.ts';
import { breakingCapacity } from './rules/breaking-capacity.ts';
import { cableAfterFuse } from './rules/cable-after-fuse.ts';
import { certificate } from './rules/certificate.ts';
import { channelBeside } from './rules/channel-beside.ts';
import { chaseDepth } from './rules/chase-depth.ts';
import { connectionPossible } from './rules/connection-possible.ts';
import { consent } from './rules/consent.ts';
import { cornerDistance } from './rules/corner-distance.ts';
import { deviceCurve } from './rules/device-curve.ts';
import { disconnects } from './rules/disconnects.ts';
import { earthingConductor } from './rules/earthing-conductor.ts';
import { faultLoopKnown } from './rules/fault-loop-known.ts';
import { fireStopping } from './rules/fire-stopping.ts';
import { fixedLoadOwnCircuit } from './rules/fixed-load-own-circuit.ts';
import { fixedLoadWithin } from './rules/fixed-load-within.ts';
import { floorCover } from './rules/floor-cover.ts';
import { fuseByLoad } from './rules/fuse-by-load.ts';
import { gasAccessory } from './rules/gas-accessory.ts';
import { gasCable } from './rules/gas-cable.ts';
import { heatSource } from './rules/heat-source.ts';
import { heatedFloor } from './rules/heated-floor.ts';
import { heavyAppliances } from './rules/heavy-appliances.ts';
import { height } from './rules/height.ts';
import { hiddenServices } from './rules/hidden-services.ts';
import { hobClearance } from './rules/hob-clearance.ts';
import { insulationBefore } from './rules/insulation-before.ts';
import { insulationContact } from './rules/insulation-contact.ts';
import { isolation } from './rules/isolation.ts';
import { jointAccess } from './rules/joint-access.ts';
import { jointConductors } from './rules/joint-conductors.ts';
import { jointRating } from './rules/joint-rating.ts';
import { joistCover } from './rules/joist-cover.ts';
import { joistHole } from './rules/joist-hole.ts';
import { loadSpread } from './rules/load-spread.ts';
import { loadsBehindFuse } from './rules/loads-behind-fuse.ts';
import { mainBond } from './rules/main-bond.ts';
import { mainFuse } from './rules/main-fuse.ts';
import { meansOfEarthing } from './rules/means-of-earthing.ts';
import { mixedColours } from './rules/mixed-colours.ts';
import { notification } from './rules/notification.ts';
import { oddlyDrawn } from './rules/odd-geometry.ts';
import { oldCable } from './rules/old-cable.ts';
import { oldCableReach } from './rules/old-cable-reach.ts';
import { oneSpurAPoint } from './rules/one-spur-a-point.ts';
import { outbuilding } from './rules/outbuilding.ts';
import { outdoorEnclosure } from './rules/outdoor-enclosure.ts';
import { outdoorRun } from './rules/outdoor-run.ts';
import { partyWallChase } from './rules/party-wall-chase.ts';
import { platesApart } from './rules/plates-apart.ts';
import { pointsApart } from './rules/points-apart.ts';
import { polarityBefore } from './rules/polarity-before.ts';
import { protectiveConductor } from './rules/protective-conductor.ts';
import { protectiveCurrent } from './rules/protective-current.ts';
import { radialCable } from './rules/radial-cable.ts';
import { rcboAvailable } from './rules/rcbo-available.ts';
import { rcboDirection } from './rules/rcbo-direction.ts';
import { rcdForBuriedCable } from './rules/rcd-for-buried-cable.ts';
import { rcdForOutlets } from './rules/rcd-for-outlets.ts';
import { rcdType } from './rules/rcd-type.ts';
import { ringCable } from './rules/ring-cable.ts';
import { ringContinuity } from './rules/ring-continuity.ts';
import { ringDevice } from './rules/ring-device.ts';
import { ringLegsApart } from './rules/ring-legs-apart.ts';
import { ringNeighbours } from './rules/ring-neighbours.ts';
import type { Rule } from './rules/rule.ts';
import { safeZones } from './rules/safe-zones.ts';
import { shapeContradiction } from './rules/shape-contradiction.ts';
import { sinkClearance } from './rules/sink-clearance.ts';
import { spareWay } from './rules/spare-way.ts';
import { spurCable } from './rules/spur-cable.ts';
import { spurCount } from './rules/spur-count.ts';
import { spurFeeds } from './rules/spur-feeds.ts';
import { spurFromSpur } from './rules/spur-from-spur.ts';
import { spurLength } from './rules/spur-length.ts';
import { surge } from './rules/surge.ts';
import { terminals } from './rules/terminals.ts';
import { ttRcd } from './rules/tt-rcd.ts';
import { unsafeBoard } from './rules/unsafe-board.ts';
import { vehicleCharging } from './rules/vehicle-charging.ts';
import { voltDrop } from './rules/volt-drop.ts';
import { wantedConnected } from './rules/wanted-connected.ts';
import { worktopClearance } from './rules/worktop-clearance.ts';

/** Every rule that schemes are checked by, in the order of the printed list. Ids are never reused. */
export const allRules: readonly Rule[] = [
  // The house as drawn
  oddlyDrawn,
  // Circuit and connections
  ringContinuity,
  ringNeighbours,
  shapeContradiction,
  areaServed,
  connectionPossible,
  wantedConnected,
  oldCableReach,
  spurFeeds,
  oneSpurAPoint,
  spurFromSpur,
  spurCount,
  spurCable,
  ringDevice,
  rcboAvailable,
  spareWay,
  deviceCurve,
  // Cable, joints, terminals, fuses, loads
  ringCable,
  ringLegsApart,
  cableAfterFuse,
  radialCable,
  jointRating,
  jointConductors,
  channelBeside,
  jointAccess,
  terminals,
  fuseByLoad,
  loadsBehindFuse,
  fixedLoadOwnCircuit,
  fixedLoadWithin,
  // Residual current protection
  rcdForOutlets,
  rcdType,
  rcdForBuriedCable,
  // Proof
  voltDrop,
  disconnects,
  protectiveConductor,
  loadSpread,
  heavyAppliances,
  spurLength,
  protectiveCurrent,
  breakingCapacity,
  // Routes
  floorCover,
  joistCover,
  joistHole,
  chaseDepth,
  backToBackChases,
  safeZones,
  fireStopping,
  partyWallChase,
  heatedFloor,
  insulationContact,
  outdoorRun,
  gasCable,
  hiddenServices,
  // Back boxes
  boxDepth,
  boxInThinWall,
  boxInPartyWall,
  backToBackBoxes,
  // Positions
  height,
  cornerDistance,
  platesApart,
  pointsApart,
  worktopClearance,
  sinkClearance,
  hobClearance,
  bathSocketDistance,
  bathZones,
  bathroomRcd,
  outdoorEnclosure,
  applianceIsolation,
  heatSource,
  gasAccessory,
  // Supply and stop gates
  meansOfEarthing,
  mainBond,
  unsafeBoard,
  insulationBefore,
  polarityBefore,
  rcboDirection,
  mainFuse,
  bondSize,
  earthingConductor,
  ttRcd,
  isolation,
  faultLoopKnown,
  // Premises, notification, scope
  arcFault,
  surge,
  boardEnclosure,
  consent,
  notification,
  certificate,
  vehicleCharging,
  outbuilding,
  asbestos,
  mixedColours,
  oldCable,
];
