/** In which language a supplier is written to. */
export const SUPPLIER_LANGUAGES = ['en', 'de'] as const;
export type SupplierLanguage = (typeof SUPPLIER_LANGUAGES)[number];
