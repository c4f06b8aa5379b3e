import type { CircuitProof } from '#engine/proof/circuit-proof.ts';

/** The circuit that a thing is part of: itself, one of its cables or of its points; null where it is of none. */
export const circuitOf = (proofs: readonly CircuitProof[], subjectId: string): string | null =>
  proofs.find(
    ({ circuit, legs, points }) =>
      circuit === subjectId ||
      legs.some(({ leg }) => leg === subjectId) ||
      points.some(({ point }) => point === subjectId),
  )?.circuit ?? null;

/** The circuit that a picture shows: the one that is asked for, else the first with cables, else the first. */
export const shownProof = (proofs: readonly CircuitProof[], circuitId: string | null): CircuitProof | null =>
  proofs.find(({ circuit }) => circuit === circuitId) ??
  proofs.find(({ legs }) => legs.length > 0) ??
  proofs[0] ??
  null;
