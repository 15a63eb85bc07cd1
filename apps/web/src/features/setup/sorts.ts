/** What the service sorts these lists by; '-' is the other way round. */
export const CONSUMABLE_SORTS = [
  ...(['name', '-name', 'category', '-category'] as const),
  ...(['reorderAt', '-reorderAt', 'reorderUpTo', '-reorderUpTo'] as const),
] as const;
export type ConsumableSort = (typeof CONSUMABLE_SORTS)[number];

export const SUPPLIER_SORTS = ['name', '-name', 'email', '-email'] as const;
export type SupplierSort = (typeof SUPPLIER_SORTS)[number];

export const TEMPLATE_SORTS = ['name', '-name', 'version', '-version'] as const;
export type TemplateSort = (typeof TEMPLATE_SORTS)[number];
