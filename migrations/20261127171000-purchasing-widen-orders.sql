-- An order that was closed opens again when a delivery it counted on turns out to be booked wrongly;
-- and an order says where its goods go.

ALTER TABLE order_events DROP CONSTRAINT order_events_kind_check;
ALTER TABLE order_events ADD CONSTRAINT order_events_kind_check CHECK (kind IN ('created', 'changed',
  'approved', 'approval withdrawn', 'sent', 'chased', 'supplier answered', 'lines cancelled', 'closed',
  'reopened', 'cancelled'));

ALTER TABLE order_rules ADD COLUMN deliver_to text CHECK (length(btrim(deliver_to)) BETWEEN 1 AND 300);
