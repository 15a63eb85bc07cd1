import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Amount } from '../../ui/values.js';
import { consumableQuery } from './api/get-consumable.js';
import type { Consumable } from './api/list-consumables.js';
import { ConsumableForm } from './consumable-form.js';
import { attributesOf } from './consumable-words.js';
import own from './pack.module.css';
import { PackSection } from './pack-section.js';
import css from './parts.module.css';

const route = getRouteApi('/in/setup/consumables/$consumableId');

export function ConsumableScreen() {
  const w = useText().setupCatalogue;
  const { consumableId } = route.useParams();
  const consumable = useQuery(consumableQuery(consumableId));
  return (
    <>
      <Link className={`${css.back ?? ''} tb-screen-only`} to="/setup/consumables" search={{}}>
        {w.back}
      </Link>
      <Loaded query={consumable}>{(data) => <Sheet consumable={data} />}</Loaded>
    </>
  );
}

function Sheet({ consumable }: { readonly consumable: Consumable }) {
  const t = useText();
  const may = useMay();
  const { edit } = route.useSearch();
  const navigate = route.useNavigate();
  const attributes = attributesOf(consumable);
  const close = () => void navigate({ search: (old) => ({ ...old, edit: undefined }) });
  const write = may('catalogue.write');
  return (
    <>
      <PageHead title={consumable.name} {...(attributes === '' ? {} : { lead: attributes })}>
        {write && (
          <Button
            variant="default"
            onClick={() => void navigate({ search: (old) => ({ ...old, edit: '1' as const }) })}
          >
            {t.setup.change}
          </Button>
        )}
      </PageHead>
      <Facts consumable={consumable} />
      <PackSection consumable={consumable} />
      <Dialog
        title={t.setup.changeOf(consumable.name)}
        size="xl"
        opened={write && edit !== undefined}
        onClose={close}
      >
        <ConsumableForm consumable={consumable} onClose={close} onSaved={close} />
      </Dialog>
    </>
  );
}

function Facts({ consumable }: { readonly consumable: Consumable }) {
  const t = useText();
  const w = t.setupCatalogue;
  const { stockUnit, reorderAt, reorderUpTo, lifeAfterOpening: life, densityGPerCm3 } = consumable;
  const figure = (value: string | null) =>
    value === null ? (
      <span className={css.quiet}>{w.notSet}</span>
    ) : (
      <Amount value={value} unit={stockUnit} />
    );
  return (
    <div className={own.facts}>
      <Figures>
        <Figure label={w.facts.category}>{consumable.category}</Figure>
        <Figure label={w.facts.unit}>{w.units[stockUnit]}</Figure>
        <Figure label={w.facts.reorder}>{figure(reorderAt)}</Figure>
        <Figure label={w.facts.upTo}>{figure(reorderUpTo)}</Figure>
        <Figure label={w.facts.life}>
          {life ? (
            w.lifeOf(life.value, life.unit)
          ) : (
            <span className={css.quiet}>{w.untilLabel}</span>
          )}
        </Figure>
        {densityGPerCm3 !== null && (
          <Figure label={w.facts.density}>
            <Amount value={densityGPerCm3} unit="g/cm³" />
          </Figure>
        )}
      </Figures>
      {!consumable.active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
    </div>
  );
}
