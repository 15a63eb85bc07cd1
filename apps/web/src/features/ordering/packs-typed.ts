import type { Proposal } from './api/list-proposals.js';

/**
 * Packs of a line as somebody typed them, or as proposed; undefined for what is no number of packs
 * that its supplier sends.
 */
export function packsTyped(line: Proposal, typed: string | undefined): number | undefined {
  if (typed === undefined) return line.packs;
  const text = typed.trim();
  if (!/^\d{1,6}$/.test(text)) return undefined;
  const packs = Number(text);
  const least = line.presentation?.minimumPacks ?? 1;
  return packs === 0 || (packs >= least && packs <= 100_000) ? packs : undefined;
}
