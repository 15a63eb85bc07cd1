import { createContext, useContext } from 'react';
import type { ToothNotation } from '#lib/dentition';
import type { Preview } from './api/preview-visit.js';
import type { VisitDraft } from './draft/draft.js';
import type { Trouble } from './draft/trouble.js';

export interface Chairside {
  readonly draft: VisitDraft;
  readonly change: (change: (draft: VisitDraft) => VisitDraft) => void;
  readonly trouble: Trouble;
  /** The person has put right what was said about these controls. */
  readonly settle: (...controls: readonly string[]) => void;
  readonly notation: ToothNotation;
  readonly today: string;
  readonly plan: Plan;
}

export interface Plan {
  readonly preview: Preview | undefined;
  /** Our keys of the restorations in the preview, in its order. */
  readonly keys: readonly string[];
  readonly state: 'incomplete' | 'no room' | 'offline' | 'wrong' | 'working' | 'ready';
}

export const ChairsideContext = createContext<Chairside | undefined>(undefined);

/** The visit that is being entered, and everything that belongs to it. */
export function useChairside(): Chairside {
  const chairside = useContext(ChairsideContext);
  if (!chairside) throw new Error('This belongs inside the chairside screen');
  return chairside;
}
