/** What is out of date after anything was booked on the shelves. */
export const SHELF_CHANGES = [
  ['stock'],
  ['movements'],
  ['layers'],
  ['lots'],
  ['deliveries'],
  ['orders'],
  ['shortfalls'],
  ['alerts'],
] as const;
