import { type QueryKey, useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { KeyKeeper } from './idempotency.js';

interface Booking<Body, Result> {
  /** Sends it; `key` goes into the Idempotency-Key header. */
  readonly send: (body: Body, key: string) => Promise<Result>;
  /** Beginnings of the query keys that are out of date afterwards. */
  readonly changes: readonly QueryKey[];
}

/**
 * Something that is booked once however often it is sent: the same body keeps its key until the
 * service has answered. `book(body)` resolves with the answer; errors are the caller's (a form's).
 */
export function useBooking<Body, Result>({ send, changes }: Booking<Body, Result>) {
  const [keys] = useState(() => new KeyKeeper());
  const queries = useQueryClient();
  const mutation = useMutation({
    mutationFn: (body: Body) => send(body, keys.keyFor(body)),
    onSuccess: async () => {
      keys.forget();
      await Promise.all(changes.map((queryKey) => queries.invalidateQueries({ queryKey })));
    },
  });
  return { book: mutation.mutateAsync, isBooking: mutation.isPending };
}
