-- The practice's own fees, the plans its patients have, and what is left of them.
-- Versions and terms are only ever added: what a quote was made from stays explainable. Of two with
-- the same day, the one recorded later counts.

CREATE TABLE fees (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  code text NOT NULL CHECK (length(btrim(code)) BETWEEN 1 AND 40),
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  fee_class text CHECK (length(btrim(fee_class)) BETWEEN 1 AND 60),
  template_id uuid,
  reason text CHECK (reason IN ('decay', 'fracture', 'wear', 'cosmetic')),
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, template_id) REFERENCES procedure_templates (practice_id, id)
);
CREATE UNIQUE INDEX fees_code ON fees (practice_id, lower(code));
CREATE UNIQUE INDEX fees_link ON fees (practice_id, template_id, coalesce(reason, ''))
  WHERE template_id IS NOT NULL AND active;

-- Either an amount as such, or points x value of a point x factor, of which the fee was made.
CREATE TABLE fee_versions (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  fee_id uuid NOT NULL,
  valid_from date NOT NULL,
  fee numeric(20,6) NOT NULL CHECK (fee >= 0),
  points numeric(18,6) CHECK (points > 0),
  point_value numeric(20,8) CHECK (point_value > 0),
  factor numeric(18,6) CHECK (factor > 0),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  CHECK (num_nonnulls(points, point_value, factor) IN (0, 3)),
  FOREIGN KEY (practice_id, fee_id) REFERENCES fees (practice_id, id)
);
CREATE INDEX fee_versions_fee ON fee_versions (fee_id, valid_from DESC, id DESC);

-- The ceiling on work the plan does not pay for differs by contract and by law: who says so, and when
-- the practice looked, belong to the setting.
CREATE TABLE fee_plans (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  in_network boolean NOT NULL,
  deductible numeric(20,6) NOT NULL CHECK (deductible >= 0),
  yearly_maximum numeric(20,6) CHECK (yearly_maximum >= 0),
  fee_ceiling text NOT NULL CHECK (fee_ceiling IN ('never', 'non-covered', 'exhausted', 'both')),
  ceiling_source text NOT NULL CHECK (length(btrim(ceiling_source)) BETWEEN 1 AND 500),
  ceiling_checked_on date NOT NULL,
  downgrade_billed boolean NOT NULL,
  active boolean NOT NULL DEFAULT true,
  UNIQUE (practice_id, id)
);
CREATE UNIQUE INDEX fee_plans_name ON fee_plans (practice_id, lower(name));

-- Of one fee or of one class of fees. Cosmetic work is covered only where a fee says so with a note.
CREATE TABLE fee_plan_terms (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  plan_id uuid NOT NULL,
  fee_id uuid,
  fee_class text CHECK (length(btrim(fee_class)) BETWEEN 1 AND 60),
  valid_from date NOT NULL,
  allowed_fee numeric(20,6) CHECK (allowed_fee >= 0),
  alternate_fee numeric(20,6) CHECK (alternate_fee >= 0),
  coverage numeric(7,6) CHECK (coverage BETWEEN 0 AND 1),
  deductible_applies boolean NOT NULL DEFAULT true,
  reasons text[] NOT NULL
    CHECK (reasons <@ ARRAY['decay', 'fracture', 'wear', 'cosmetic'] AND cardinality(reasons) > 0),
  cosmetic_note text CHECK (length(btrim(cosmetic_note)) BETWEEN 1 AND 500),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  CHECK (num_nonnulls(fee_id, fee_class) = 1),
  CHECK (fee_id IS NOT NULL OR (allowed_fee IS NULL AND alternate_fee IS NULL)),
  CHECK (num_nonnulls(allowed_fee, alternate_fee, coverage) > 0),
  CHECK ('cosmetic' <> ALL (reasons) OR (fee_id IS NOT NULL AND cosmetic_note IS NOT NULL)),
  FOREIGN KEY (practice_id, plan_id) REFERENCES fee_plans (practice_id, id),
  FOREIGN KEY (practice_id, fee_id) REFERENCES fees (practice_id, id)
);
CREATE INDEX fee_plan_terms_plan ON fee_plan_terms (plan_id, valid_from DESC, id DESC);

-- What a person was told is left, on the day it was told. maximum_left NULL: the plan has no maximum.
CREATE TABLE plan_balances (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  plan_id uuid NOT NULL,
  chart_reference text NOT NULL CHECK (length(btrim(chart_reference)) BETWEEN 1 AND 60),
  as_of date NOT NULL,
  deductible_left numeric(20,6) NOT NULL CHECK (deductible_left >= 0),
  maximum_left numeric(20,6) CHECK (maximum_left >= 0),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  FOREIGN KEY (practice_id, plan_id) REFERENCES fee_plans (practice_id, id)
);
CREATE INDEX plan_balances_chart
  ON plan_balances (practice_id, lower(chart_reference), as_of DESC, id DESC);

-- The latest restorations of one template and reason: what a quote's range rests on.
CREATE INDEX restorations_kind ON restorations (practice_id, template_id, reason, id DESC);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['fees', 'fee_versions', 'fee_plans', 'fee_plan_terms', 'plan_balances'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE (code, name, fee_class, template_id, reason, active) ON fees TO traybook_app;
GRANT UPDATE (name, in_network, deductible, yearly_maximum, fee_ceiling, ceiling_source,
  ceiling_checked_on, downgrade_billed, active) ON fee_plans TO traybook_app;
