/** What is written down as open, and under which id the opening is known. */
export interface OpenEpisode {
  readonly id: string;
  readonly alertId: string;
}

interface Changes<A> {
  readonly opened: readonly A[];
  readonly closed: readonly OpenEpisode[];
}

/** What the data opened and closed since the last look; each reason is open at most once. */
export function alertChanges<A extends { readonly id: string }>(
  now: readonly A[],
  open: readonly OpenEpisode[],
): Changes<A> {
  const known = new Set(open.map((episode) => episode.alertId));
  const still = new Set(now.map((alert) => alert.id));
  return {
    opened: now.filter((alert) => !known.has(alert.id)),
    closed: open.filter((episode) => !still.has(episode.alertId)),
  };
}
