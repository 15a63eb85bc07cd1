import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useText } from '../../text/text-provider.js';
import type { Fee } from './api/list-fees.js';
import { templateNamesQuery } from './api/list-templates.js';
import css from './fees.module.css';

/** Says which restorations are charged at a fee without being asked. */
export function useUsedFor(): (fee: Fee) => ReactNode {
  const w = useText().fees;
  const templates = useQuery(templateNamesQuery).data?.items ?? [];
  const names = new Map(templates.map(({ id, name }) => [id, name]));
  return ({ templateId, reason }) => {
    const name = templateId === null ? undefined : names.get(templateId);
    if (name === undefined) return <span className={css.quiet}>{w.usedByCode}</span>;
    return w.usedFor(name, reason === null ? undefined : w.reasons[reason]);
  };
}
