import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';
import type { FileKind } from '../kinds.js';

export type Checked = Shape<'CheckedImportDto'>;
export type CheckedSheet = Shape<'CheckedSheetDto'>;
export type RowFate = Shape<'RowFateDto'>;
export type ImportRun = Shape<'ImportRunDto'>;
export type ImportKinds = Shape<'ImportKindsDto'>;

/** What is asked of a file: what it lists, and what a person said of its columns. */
export interface Asked {
  readonly kind: FileKind;
  readonly name: string;
  readonly size: number;
  readonly changedAt: number;
  /** Letters of a column, and its key or '-' to leave it out. */
  readonly columns: readonly (readonly [column: string, as: string])[];
  readonly ignoreUnknown: boolean;
}

function queryOf({ kind, name, columns, ignoreUnknown }: Asked) {
  return {
    kind,
    name: name.slice(0, 200),
    ...(columns.length > 0 ? { columns: columns.map((each) => each.join(':')).join(',') } : {}),
    ...(ignoreUnknown ? { ignoreUnknown: 'true' as const } : {}),
  };
}

const FILE = { 'Content-Type': 'application/octet-stream' };

/** What would become of each row. The bytes of the file are the body. */
export function checkImport(asked: Asked, file: Blob): Promise<Checked> {
  return answerOf(
    api.POST('/api/imports/check', {
      params: { query: queryOf(asked) },
      headers: FILE,
      body: '',
      bodySerializer: () => file,
    }),
  );
}

/** Brings it in; the key is also the id under which it can be asked how far it is. */
export function importFile(asked: Asked, file: Blob, key: string): Promise<ImportRun> {
  return answerOf(
    api.POST('/api/imports', {
      params: { query: { ...queryOf(asked), id: key }, header: { 'Idempotency-Key': key } },
      headers: FILE,
      body: '',
      bodySerializer: () => file,
    }),
  );
}

export const importKindsQuery = queryOptions({
  queryKey: ['import-kinds'],
  queryFn: ({ signal }): Promise<ImportKinds> =>
    answerOf(api.GET('/api/imports/kinds', { signal })),
  staleTime: Number.POSITIVE_INFINITY,
});

/** The last imports, with those that are under way and how far they are. */
export const importsQuery = queryOptions({
  queryKey: ['imports'],
  queryFn: ({ signal }): Promise<Shape<'ImportRunsDto'>> =>
    answerOf(api.GET('/api/imports', { signal })),
});
