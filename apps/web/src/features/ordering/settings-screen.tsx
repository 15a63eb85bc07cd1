import { useQuery } from '@tanstack/react-query';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { planningSettingsQuery } from './api/planning-settings.js';
import { PriceListSection } from './price-list-section.js';
import { SettingsForm } from './settings-form.js';
import { SupplierSection } from './supplier-section.js';

/** What the practice wants of its ordering, and what its suppliers ask for. */
export function OrderingSettingsScreen() {
  const w = useText().orderingSettings;
  const may = useMay();
  const query = useQuery(planningSettingsQuery);
  return (
    <>
      <PageHead title={w.title} lead={w.lead} />
      <Section title={w.wants}>
        <Loaded query={query}>
          {(settings) => (
            <SettingsForm
              key={JSON.stringify(settings)}
              settings={settings}
              readOnly={!may('ordering.manage')}
            />
          )}
        </Loaded>
      </Section>
      <SupplierSection />
      <PriceListSection />
      <Caution />
    </>
  );
}
