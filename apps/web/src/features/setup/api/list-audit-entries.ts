import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type AuditEntry = Shape<'AuditEntryDto'>;

interface Search {
  readonly kind?: string | undefined;
  readonly subject?: string | undefined;
  readonly person?: string | undefined;
  readonly cursor?: string | undefined;
}

export const auditQuery = ({ kind, subject, person, cursor }: Search) =>
  queryOptions({
    queryKey: ['audit-entries', { kind, subject, person, cursor }],
    queryFn: ({ signal }): Promise<Shape<'AuditEntriesDto'>> => {
      const query = {
        limit: 50,
        ...(kind === undefined ? {} : { subjectKind: kind }),
        ...(subject === undefined ? {} : { subjectId: subject }),
        ...(person === undefined ? {} : { personId: person }),
        ...(cursor === undefined ? {} : { cursor }),
      };
      return answerOf(api.GET('/api/audit-entries', { params: { query }, signal }));
    },
    placeholderData: (before) => before,
  });
