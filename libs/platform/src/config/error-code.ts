/** The code of an error from Node or PostgreSQL ('ENOENT', '28P01'); '' when it has none. */
export function errorCode(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
}

export function hasCode(error: unknown, ...codes: string[]): boolean {
  return codes.includes(errorCode(error));
}

export function errorMessage(error: unknown): string {
  return typeof error === 'object' && error !== null && 'message' in error
    ? String(error.message)
    : String(error);
}
