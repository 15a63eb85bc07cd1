import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { BookedVisit } from '../api/list-booked-visits.js';

/**
 * A booking as it was when a form about it was opened: what is shown behind the form may be renewed, but
 * what is typed rests on what was seen. When sending comes to nothing, what is behind is renewed.
 */
export function useSeenBooking(visit: BookedVisit | undefined) {
  const [version] = useState(visit?.version ?? 0);
  const queries = useQueryClient();
  const refreshed = async <R>(sending: Promise<R>): Promise<R> => {
    try {
      return await sending;
    } catch (error) {
      await queries.invalidateQueries({ queryKey: ['booked-visits'] });
      throw error;
    }
  };
  return { version, refreshed };
}
