export const GROUPS = ['template', 'reason', 'dentist', 'month'] as const;
export type Group = (typeof GROUPS)[number];

/** Reads 'template,month'; undefined for an unknown or repeated word. Nothing: by template. */
export function parseGroupBy(text: string | undefined): readonly Group[] | undefined {
  if (text === undefined) return ['template'];
  const words = text.split(',').map((word) => word.trim());
  const groups = GROUPS.filter((group) => words.includes(group));
  return groups.length === words.length ? groups : undefined;
}
