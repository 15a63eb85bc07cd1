import { useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import type { ScannedThing } from '../../../app/scan/thing.js';
import { useScanner } from '../../../app/scan/use-scanner.js';
import { useText } from '../../../text/text-provider.js';
import { lotHoldingsQuery } from '../api/list-holdings.js';

/** A scan opens what it stands on: the one holding, or all of its consumable, or a place. */
export function useShelfScan() {
  const { scan } = useText();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const open = (search: {
    readonly consumableId?: string;
    readonly holdingId?: string;
    readonly locationId?: string;
    readonly q?: string;
  }) => void navigate({ to: '/shelves', search });
  const onThing = async (thing: ScannedThing): Promise<string | undefined> => {
    const { consumableId, holdingId, locationId, lotId, lotNumber } = thing;
    if (locationId !== null) open({ locationId });
    else if (holdingId !== null) open({ holdingId });
    if (locationId !== null || holdingId !== null) return undefined;
    const found = lotId === null ? [] : await queries.fetchQuery(lotHoldingsQuery(lotId));
    const [only] = found;
    if (only && found.length === 1) open({ holdingId: only.id });
    else if (consumableId !== null) open({ consumableId });
    if (only || lotNumber === null) return undefined;
    return lotId === null ? scan.shelves.lotUnknown(lotNumber) : scan.shelves.noneLeft(lotNumber);
  };
  return useScanner({ onThing });
}
