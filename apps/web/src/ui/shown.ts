/** Which rows of a list are shown: undefined is what is in use. */
export type Shown = 'retired' | 'all';

/** As the service asks for it. */
export function activeFlag(show: Shown | undefined): { active?: 'true' | 'false' } {
  if (show === 'all') return {};
  return { active: show === 'retired' ? 'false' : 'true' };
}
