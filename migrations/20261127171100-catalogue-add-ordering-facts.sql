-- How a supplier is written to, who the practice is to it, and what it calls its packs.

ALTER TABLE suppliers
  ADD COLUMN language text NOT NULL DEFAULT 'en' CHECK (language IN ('en', 'de')),
  ADD COLUMN customer_number text CHECK (length(btrim(customer_number)) BETWEEN 1 AND 60);
ALTER TABLE presentations
  ADD COLUMN article_code text CHECK (length(btrim(article_code)) BETWEEN 1 AND 60);
