import type { Ceiling, Floor, Site, Storey } from '#model/building.ts';
import type { Board, Circuit, Point, Supply } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { type BoardFact, setBoardCertainty, setBoardFact } from '../../edits/boards.ts';
import { type CircuitFact, setCircuitCertainty, setCircuitFact } from '../../edits/circuits.ts';
import type { FactValue } from '../../edits/facts.ts';
import {
  type FoundFact,
  type PointFact,
  setFoundFact,
  setPointCertainty,
  setPointFact,
} from '../../edits/points.ts';
import { setSiteCertainty, setSiteFact } from '../../edits/site.ts';
import {
  type CeilingFact,
  type FloorFact,
  type StoreyFact,
  setCeilingFact,
  setFloorFact,
  setStoreyCertainty,
  setStoreyFact,
} from '../../edits/storeys.ts';
import { setSupplyCertainty, setSupplyFact } from '../../edits/supply.ts';

/** The house's facts with the edits that change them, as fields of facts are told them. */
export const siteFacts = (site: Site) => ({
  thing: site,
  certainty: site.certainty,
  set: setSiteFact,
  sure: setSiteCertainty,
});

/** The supply's facts with their edits. */
export const supplyFacts = (supply: Supply) => ({
  thing: supply,
  certainty: supply.certainty,
  set: setSupplyFact,
  sure: setSupplyCertainty,
});

/** A storey's facts with their edits. */
export const storeyFacts = (storey: Storey) => ({
  thing: storey,
  certainty: storey.certainty,
  set: <K extends StoreyFact>(fact: K, value: FactValue<Storey, K>) => setStoreyFact(storey, fact, value),
  sure: (fact: StoreyFact, certainty: Certainty) =>
    setStoreyCertainty(storey, { part: 'storey', fact }, certainty),
});

/** A floor's facts with their edits. */
export const floorFacts = (storey: Storey) => ({
  thing: storey.floor,
  certainty: storey.floor.certainty,
  set: <K extends FloorFact>(fact: K, value: FactValue<Floor, K>) => setFloorFact(storey, fact, value),
  sure: (fact: FloorFact, certainty: Certainty) =>
    setStoreyCertainty(storey, { part: 'floor', fact }, certainty),
});

/** A ceiling's facts with their edits. */
export const ceilingFacts = (storey: Storey) => ({
  thing: storey.ceiling,
  certainty: storey.ceiling.certainty,
  set: <K extends CeilingFact>(fact: K, value: FactValue<Ceiling, K>) => setCeilingFact(storey, fact, value),
  sure: (fact: CeilingFact, certainty: Certainty) =>
    setStoreyCertainty(storey, { part: 'ceiling', fact }, certainty),
});

/** A board's facts with their edits. */
export const boardFacts = (board: Board) => ({
  thing: board,
  certainty: board.certainty,
  set: <K extends BoardFact>(fact: K, value: FactValue<Board, K>) => setBoardFact(board, fact, value),
  sure: (fact: BoardFact, certainty: Certainty) => setBoardCertainty(board, fact, certainty),
});

/** A circuit's facts with their edits. */
export const circuitFacts = (circuit: Circuit) => ({
  thing: circuit,
  certainty: circuit.certainty,
  set: <K extends CircuitFact>(fact: K, value: FactValue<Circuit, K>) => setCircuitFact(circuit, fact, value),
  sure: (fact: CircuitFact, certainty: Certainty) => setCircuitCertainty(circuit, fact, certainty),
});

/** A point's facts with their edits. */
export const pointFacts = (point: Point) => ({
  thing: point,
  certainty: point.certainty,
  set: <K extends PointFact>(fact: K, value: FactValue<Point, K>) => setPointFact(point, fact, value),
  sure: (fact: PointFact, certainty: Certainty) => setPointCertainty(point, fact, certainty),
});

/** What was found at a point's plate, with its edits; what was said of the whole plate counts for each fact of it. */
export const plateFacts = (point: Point) => {
  const { asFound, ...own } = point.certainty ?? {};
  const ofPlate: Partial<Record<FoundFact, Certainty>> =
    asFound === undefined
      ? {}
      : {
          cablesSeen: asFound,
          boxDepthMm: asFound,
          slackMm: asFound,
          colours: asFound,
          lugs: asFound,
          role: asFound,
        };
  return {
    thing: point.asFound ?? {},
    certainty: { ...ofPlate, ...own },
    set: <K extends FoundFact>(fact: K, value: FactValue<NonNullable<Point['asFound']>, K>) =>
      setFoundFact(point, fact, value),
    sure: (fact: FoundFact, certainty: Certainty) => setPointCertainty(point, fact, certainty),
  };
};
