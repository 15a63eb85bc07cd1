import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { ToothNotation } from '#lib/dentition';
import type { Shape } from '../../api/client.js';
import { useMay, useSession } from '../../app/session.js';
import { lastRestorationQuery } from './api/last-restoration.js';
import { type Consumable, consumablesQuery } from './api/list-consumables.js';
import {
  type ExampleTooth,
  factsOf,
  MOST_SHADES,
  readTeeth,
  teethLike,
  writeTeeth,
} from './example.js';

/** Where the example is on the screen, for a link that leads there. */
export const EXAMPLE_PLACE = 'example';

/** The example as it stands in the address. */
export interface ExampleState {
  readonly teeth?: string | undefined;
  readonly shades?: string | undefined;
  readonly people?: string | undefined;
  readonly room?: string | undefined;
  readonly setting?: '1' | undefined;
}

export interface ExampleAddress {
  readonly state: ExampleState;
  readonly change: (part: ExampleState) => void;
}

/** How "no shade" stands in the address; nothing there means the first shade of the practice. */
const NO_SHADES = 'none';

export interface Example {
  readonly teeth: readonly ExampleTooth[];
  readonly setTeeth: (teeth: readonly ExampleTooth[]) => void;
  readonly shades: readonly string[];
  readonly setShades: (shades: readonly string[]) => void;
  /** Everything that can be chosen as a shade; undefined until it is known. */
  readonly palette: readonly Consumable[] | undefined;
  /** Whether everything that belongs to the example is known. */
  readonly isReady: boolean;
  /** Whether it is the case in which the template was used last. */
  readonly isLastCase: boolean;
  readonly staffCount: number;
  readonly setStaffCount: (people: string) => void;
  readonly room: string | undefined;
  readonly setRoom: (room: string | undefined) => void;
  readonly isSetting: boolean;
  readonly setSetting: (open: boolean) => void;
  readonly notation: ToothNotation;
  readonly facts: Shape<'RestorationFactsDto'>[];
}

function chosenShades(address: string | undefined, palette: readonly Consumable[] | undefined) {
  if (address === NO_SHADES) return [];
  const known = new Set(palette?.map(({ id }) => id));
  const named = (address ?? '').split('~').filter((id) => known.has(id));
  if (named.length > 0) return named.slice(0, MOST_SHADES);
  return (palette ?? []).slice(0, 1).map(({ id }) => id);
}

/** The case in which a template was used last; undefined until it is known, null without one. */
function useLastCase(templateId: string | undefined, isWanted: boolean) {
  const may = useMay();
  const enabled = isWanted && templateId !== undefined && may('costs.read');
  const { data, isError } = useQuery({ ...lastRestorationQuery(templateId ?? ''), enabled });
  return enabled && !isError ? data : null;
}

export function useExample({ state, change }: ExampleAddress, templateId?: string): Example {
  const { toothNotation: notation } = useSession().practice;
  const found = useQuery(consumablesQuery({ limit: 500 })).data?.items;
  const palette = useMemo(() => found?.filter(({ shade }) => shade !== null), [found]);
  const lastCase = useLastCase(templateId, state.teeth === undefined);
  const like = lastCase ? teethLike(lastCase, notation) : undefined;
  const address = state.teeth ?? like;
  const teeth = useMemo(() => readTeeth(address), [address]);
  const shades = useMemo(() => chosenShades(state.shades, palette), [state.shades, palette]);
  return {
    teeth,
    setTeeth: (next) => change({ teeth: writeTeeth(next) }),
    shades,
    setShades: (next) => change({ shades: next.length === 0 ? NO_SHADES : next.join('~') }),
    palette,
    isReady: palette !== undefined && lastCase !== undefined,
    isLastCase: state.teeth === undefined && like !== undefined,
    staffCount: Number(state.people ?? '2'),
    setStaffCount: (people) => change({ people }),
    room: state.room,
    setRoom: (room) => change({ room }),
    isSetting: state.setting !== undefined,
    setSetting: (open) => change({ setting: open ? '1' : undefined }),
    notation,
    facts: factsOf(teeth, shades, notation),
  };
}
