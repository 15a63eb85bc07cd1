/** A restoration of a visit. */
export interface Placed {
  readonly id: string;
  readonly tooth: number;
}

/** A usage line: of one restoration, of a tooth, or (with neither) of the whole visit. */
export interface LineOwner {
  readonly restorationId: string | null;
  readonly tooth: number | null;
}

export type UsedFor = 'restoration' | 'tooth' | 'visit';

export function usedFor(line: LineOwner): UsedFor {
  if (line.restorationId !== null) return 'restoration';
  return line.tooth === null ? 'visit' : 'tooth';
}

/**
 * The restorations that may hold what a line used. A shared line touched all restorations of its
 * tooth or visit: none may be left out of a recall.
 */
export function affectedBy<R extends Placed>(line: LineOwner, restorations: readonly R[]): R[] {
  if (line.restorationId !== null) return restorations.filter((r) => r.id === line.restorationId);
  return restorations.filter((r) => line.tooth === null || r.tooth === line.tooth);
}
