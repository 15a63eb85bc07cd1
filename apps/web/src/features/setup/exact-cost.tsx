import { NativeSelect } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { problemWords } from '../../ui/problem-words.js';
import { Money } from '../../ui/values.js';
import type { Template } from './api/get-template.js';
import { locationsQuery } from './api/list-locations.js';
import { visitPreviewQuery } from './api/preview-visit.js';
import css from './example.module.css';
import type { Example } from './use-example.js';

interface Props {
  readonly template: Template;
  readonly example: Example;
}

/** What the saved version would cost if the example were recorded today, with the lots of a room. */
export function ExactCost({ template, example }: Props) {
  const w = useText().setupExample;
  const places = useQuery(locationsQuery).data?.items ?? [];
  const rooms = places.filter(({ kind, active }) => active && kind === 'room');
  const room = rooms.find(({ id }) => id === example.room);
  if (rooms.length === 0) return null;
  return (
    <div className={css.exact}>
      <NativeSelect
        label={w.exact}
        description={w.exactHint}
        value={room?.id ?? ''}
        data={[
          { value: '', label: w.exactNone },
          ...rooms.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(event) => example.setRoom(event.currentTarget.value || undefined)}
      />
      {room && <Cost template={template} example={example} locationId={room.id} />}
    </div>
  );
}

interface CostProps extends Props {
  readonly locationId: string;
}

function Cost({ template, example, locationId }: CostProps) {
  const t = useText();
  const w = t.setupExample;
  const { today } = useSession();
  const { facts, staffCount } = example;
  const preview = useQuery(
    visitPreviewQuery({
      visitedOn: today,
      locationId,
      staffCount,
      restorations: facts.map((each) => ({
        ...each,
        templateId: template.id,
        templateVersion: template.version,
      })),
    }),
  );
  if (preview.error) return <p className={css.waiting}>{problemWords(t, preview.error)}</p>;
  if (!preview.data) return null;
  const { materialCost, retakeCost, estimated, usage } = preview.data;
  const short = estimated || usage.some(({ shortfall }) => shortfall !== '0');
  return (
    <>
      <Figures>
        <Figure label={w.exactCost}>
          <Money value={materialCost} />
        </Figure>
        {example.teeth.some(({ attempts }) => attempts > 1) && (
          <Figure label={w.exactRetake}>
            <Money value={retakeCost} />
          </Figure>
        )}
      </Figures>
      {short && <p className={css.quiet}>{w.shortfall}</p>}
    </>
  );
}
