import type { Shape } from '../../../api/client.js';

type Template = Pick<Shape<'TemplateDto'>, 'lines'>;

/** Whether a template leaves its paste open for this reason; before one is given: for any. */
export function asksForShades({ lines }: Template, reason: string | null): boolean {
  return lines.some(
    (line) =>
      line.consumableId === null &&
      (line.reasons === null || reason === null || line.reasons.includes(reason)),
  );
}
