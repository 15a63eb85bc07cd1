import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { RowButton } from '../../ui/row-button.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Money } from '../../ui/values.js';
import type { Consumable } from './api/list-consumables.js';
import { type Presentation, presentationsQuery } from './api/list-presentations.js';
import { type Supplier, suppliersQuery } from './api/list-suppliers.js';
import own from './pack.module.css';
import { PackForm } from './pack-form.js';
import { PackPartsForm } from './pack-parts.js';
import { packSentence, packTotal, unitPrice } from './pack-words.js';
import css from './parts.module.css';
import { useUnitPrice } from './use-unit-price.js';

const route = getRouteApi('/in/setup/consumables/$consumableId');

interface Props {
  readonly consumable: Consumable;
}

/** The ways in which a consumable is bought, each written out in words. */
export function PackSection({ consumable }: Props) {
  const { setupCatalogue: w, setupKits: kits } = useText();
  const may = useMay();
  const packs = useQuery(presentationsQuery(consumable.id));
  const suppliers = useQuery(suppliersQuery({ show: 'all', limit: 500 })).data?.items ?? [];
  const { pack } = route.useSearch();
  const navigate = route.useNavigate();
  const open = (which: string | undefined) =>
    void navigate({ search: (old) => ({ ...old, pack: which }) });
  const write = may('catalogue.write');
  const edited = packs.data?.items.find(({ id }) => id === pack);
  const kit = packs.data?.items.find(({ id }) => `parts-${id}` === pack);
  return (
    <Section title={w.packs} hint={w.packsHint}>
      <Loaded query={packs}>
        {({ items }) =>
          items.length === 0 ? (
            <EmptyState title={w.packEmpty} hint={w.packEmptyHint} />
          ) : (
            <ul className={own.packs}>
              {items.map((item) => (
                <PackRow
                  key={item.id}
                  pack={item}
                  unit={consumable.stockUnit}
                  suppliers={suppliers}
                  onChange={write ? () => open(item.id) : undefined}
                  onParts={write ? () => open(`parts-${item.id}`) : undefined}
                />
              ))}
            </ul>
          )
        }
      </Loaded>
      {write && (
        <Button variant="default" className={own.add ?? ''} onClick={() => open('new')}>
          {w.addPack}
        </Button>
      )}
      <Dialog
        title={edited ? edited.name : w.packTitle}
        size="lg"
        opened={write && (pack === 'new' || edited !== undefined)}
        onClose={() => open(undefined)}
      >
        <PackForm
          consumable={consumable}
          suppliers={suppliers}
          {...(edited ? { pack: edited } : {})}
          onClose={() => open(undefined)}
        />
      </Dialog>
      {write && kit && (
        <Dialog title={kits.title(kit.name)} size="lg" opened onClose={() => open(undefined)}>
          <PackPartsForm pack={kit} onClose={() => open(undefined)} />
        </Dialog>
      )}
    </Section>
  );
}

interface RowProps {
  readonly pack: Presentation;
  readonly unit: Consumable['stockUnit'];
  readonly suppliers: readonly Supplier[];
  readonly onChange: (() => void) | undefined;
  readonly onParts: (() => void) | undefined;
}

function PackRow({ pack, unit, suppliers, onChange, onParts }: RowProps) {
  const t = useText();
  const w = t.setupCatalogue;
  const format = useFormat();
  const perUnit = useUnitPrice();
  const containersPerPack = String(pack.containersPerPack);
  const each = unitPrice(pack.listPrice, packTotal(containersPerPack, pack.contentPerContainer));
  const supplier = suppliers.find(({ id }) => id === pack.supplierId);
  return (
    <li className={own.pack} data-retired={!pack.active || undefined}>
      <div>
        <h3>{pack.name}</h3>
        <p className={own.sentence}>
          {packSentence({ ...pack, containersPerPack }, unit, format, t)}
        </p>
        <p className={css.quiet}>{w.dispensings[pack.dispensing]}</p>
        {!pack.active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
      </div>
      {onChange && onParts && (
        <div className={own.acts}>
          <RowButton label={t.setupKits.partsOf(pack.name)} onClick={onParts}>
            {t.setupKits.parts}
          </RowButton>
          <RowButton label={t.setup.changeOf(pack.name)} onClick={onChange}>
            {t.setup.change}
          </RowButton>
        </div>
      )}
      <div className={own.packFigures}>
        <Figures>
          <Figure label={w.packFacts.price}>
            <Money value={pack.listPrice} />
          </Figure>
          {each !== undefined && (
            <Figure label={w.priceEach(format.unitName('1', unit))}>{perUnit(each)}</Figure>
          )}
          <Figure label={w.packFacts.supplier}>{supplier?.name ?? w.noSupplier}</Figure>
          {pack.deviceIdentifier !== null && (
            <Figure label={w.packFacts.device}>{pack.deviceIdentifier}</Figure>
          )}
        </Figures>
      </div>
    </li>
  );
}
