import { QueryFailedError } from 'typeorm';
import { refuse } from '#lib/platform';

/** Unique constraint -> the field that ran into it and a sentence for the sender. */
export type TakenNames = Readonly<
  Record<string, { readonly field: string; readonly detail: string }>
>;

function constraintOf(error: unknown): string | undefined {
  if (!(error instanceof QueryFailedError)) return undefined;
  const cause: { code?: unknown; constraint?: unknown } = error.driverError;
  return cause.code === '23505' && typeof cause.constraint === 'string'
    ? cause.constraint
    : undefined;
}

/**
 * Writes a row and, where a unique constraint says no, refuses with the field at fault. The
 * database decides, so two senders at once cannot both win.
 */
export async function refusingTaken<T>(names: TakenNames, write: () => Promise<T>): Promise<T> {
  try {
    return await write();
  } catch (error) {
    const taken = names[constraintOf(error) ?? ''];
    if (!taken) throw error;
    throw refuse('already_exists', taken.detail, [
      { field: taken.field, message: 'is already in use' },
    ]);
  }
}
