import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { Loaded } from '../../../ui/loaded.js';
import { Section } from '../../../ui/section.js';
import type { Visit } from '../api/get-visit.js';
import { chargesQuery } from './api/list-charges.js';
import { feesQuery } from './api/list-fees.js';
import { ChargesForm } from './charges-form.js';
import { ChargesList } from './charges-list.js';
import type { ChargesOfVisit } from './charges-of-visit.js';

/** What was asked for the restorations of a visit, and who pays it. */
export function ChargesSection({ visit }: { readonly visit: Visit }) {
  const charges = useQuery(chargesQuery(visit.id));
  const fees = useQuery(feesQuery(visit.visitedOn));
  return (
    <Loaded query={charges}>
      {({ items }) => (
        <Loaded query={fees}>
          {(list) => <Charges visit={visit} records={items} fees={list.items} />}
        </Loaded>
      )}
    </Loaded>
  );
}

function Charges(of: ChargesOfVisit) {
  const words = useText().visitCharges;
  const mayRecord = useMay()('charges.record') && of.visit.reversal === null;
  const [isOpen, setOpen] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);
  // Whoever closes the form goes on where it was opened.
  useEffect(() => {
    if (wasOpen.current && !isOpen) opener.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  const hint = of.visit.reversal === null ? words.hint : words.reversedHint;
  const label = of.records.length === 0 ? words.record : words.correct;
  return (
    <Section title={words.title} hint={hint}>
      {isOpen ? (
        <ChargesForm {...of} onClose={() => setOpen(false)} />
      ) : (
        <>
          <ChargesList {...of} />
          {mayRecord && (
            <Button
              ref={opener}
              variant="default"
              className="tb-screen-only"
              mt="1rem"
              onClick={() => setOpen(true)}
            >
              {label}
            </Button>
          )}
        </>
      )}
    </Section>
  );
}
