import { isNativeError } from 'node:util/types';

/** Why a message did not arrive, in the words of the other side; anything but an error is thrown on. */
export function wentWrong(error: unknown): string {
  if (!isNativeError(error)) throw error;
  // fetch says "fetch failed" and keeps the reason behind it.
  const { cause } = error;
  return isNativeError(cause) && cause.message !== '' ? cause.message : error.message;
}
