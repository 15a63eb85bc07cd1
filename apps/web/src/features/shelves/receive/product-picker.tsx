import { Select } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQueries, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { presentationsQuery } from '../api/list-presentations.js';
import { summaryQuery } from '../api/list-summary.js';
import { nameOf } from '../parts/what.js';
import type { Product } from './lines.js';
import { packWords } from './pack-words.js';
import css from './receive.module.css';

interface Props {
  readonly product: Product | null;
  readonly supplierId: string;
  readonly error: string | undefined;
  readonly onProduct: (product: Product | null) => void;
  readonly onEnter: () => void;
}

const SHOWN = 10;

/**
 * What is bought in packs and is called so; what the supplier sells comes first. Nothing while it is
 * looked for: who types and takes the first must not get what was found before.
 */
function useProducts(typed: string, supplierId: string): readonly Product[] | undefined {
  const wanted = typed.trim();
  const [asked] = useDebouncedValue(wanted, 200);
  const q = asked === '' ? undefined : asked;
  const page = useQuery(summaryQuery({ q, limit: SHOWN }));
  const found = page.data?.items ?? [];
  const products = useQueries({
    queries: found.map(({ consumable }) => presentationsQuery(consumable.id)),
    combine: (results) => {
      if (results.some(({ isPending }) => isPending)) return undefined;
      return found.flatMap(({ consumable }, i) => {
        const ways = results[i]?.data ?? [];
        const own = ways.filter((way) => way.supplierId === supplierId);
        const others = ways.filter((way) => way.supplierId !== supplierId);
        return [...own, ...others].map((presentation) => ({ consumable, presentation }));
      });
    },
  });
  return asked === wanted && page.data && !page.isPlaceholderData ? products : undefined;
}

/** Finds a product by its name, shade or size, pack by pack. */
export function ProductPicker({ product, supplierId, error, onProduct, onEnter }: Props) {
  const { receive, ui } = useText();
  const chosen = product === null ? '' : nameOf(product.consumable);
  const [typed, setTyped] = useState(chosen);
  const [opened, setOpened] = useState(false);
  const found = useProducts(typed === chosen ? '' : typed, supplierId);
  const others = found ?? [];
  const all = product && !others.some(isSame(product)) ? [product, ...others] : others;
  return (
    <Select
      label={receive.product}
      placeholder={receive.productPlaceholder}
      data={all.map((one) => ({ value: one.presentation.id, label: nameOf(one.consumable) }))}
      value={product?.presentation.id ?? null}
      onChange={(id) => onProduct(all.find((one) => one.presentation.id === id) ?? null)}
      searchable
      searchValue={typed}
      onSearchChange={setTyped}
      dropdownOpened={opened}
      onDropdownOpen={() => setOpened(true)}
      onDropdownClose={() => setOpened(false)}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && !opened) onEnter();
      }}
      filter={({ options }) => options}
      renderOption={({ option }) => <Option product={all.find(isValue(option.value))} />}
      nothingFoundMessage={found === undefined ? ui.busy : receive.noProduct}
      error={error}
      maxDropdownHeight={340}
      comboboxProps={{
        transitionProps: { duration: 0 },
        width: 'target',
        position: 'bottom-start',
      }}
      rightSection={<span />}
      rightSectionWidth={10}
    />
  );
}

const isSame = (product: Product) => isValue(product.presentation.id);

const isValue =
  (id: string) =>
  ({ presentation }: Product): boolean =>
    presentation.id === id;

function Option({ product }: { readonly product: Product | undefined }) {
  const t = useText();
  const format = useFormat();
  if (!product) return null;
  return (
    <span>
      {nameOf(product.consumable)}
      <span className={css.pack}>
        {`${product.presentation.name} · ${packWords(product, format, t)}`}
      </span>
    </span>
  );
}
