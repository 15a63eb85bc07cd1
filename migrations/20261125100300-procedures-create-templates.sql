-- Procedure templates: what a kind of restoration uses. A version never changes once written.

CREATE TABLE procedure_templates (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  active boolean NOT NULL DEFAULT true,
  latest_version integer NOT NULL CHECK (latest_version > 0),
  UNIQUE (practice_id, id)
);
CREATE UNIQUE INDEX procedure_templates_name ON procedure_templates (practice_id, lower(name));

CREATE TABLE template_versions (
  template_id uuid NOT NULL,
  version integer NOT NULL CHECK (version > 0),
  practice_id uuid NOT NULL REFERENCES practices,
  minutes integer NOT NULL CHECK (minutes BETWEEN 0 AND 1440),
  layer_thickness_mm numeric(18,6) NOT NULL CHECK (layer_thickness_mm > 0),
  note text,
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (template_id, version),
  FOREIGN KEY (practice_id, template_id) REFERENCES procedure_templates (practice_id, id)
);

-- consumable_id NULL: the line takes the shade(s) chosen for the restoration.
CREATE TABLE template_lines (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  template_id uuid NOT NULL,
  version integer NOT NULL,
  line_number integer NOT NULL CHECK (line_number > 0),
  consumable_id uuid,
  driver text NOT NULL CHECK (driver IN ('visit', 'staff member', 'front segment or quadrant', 'tooth',
    'restoration', 'surface', 'proximal surface', 'layer', 'mm3', 'shade', 'attempt', 'cycle')),
  placed numeric(18,6) NOT NULL CHECK (placed >= 0),
  dispensed numeric(18,6) NOT NULL CHECK (dispensed >= placed AND dispensed > 0),
  every_attempt boolean NOT NULL DEFAULT false,
  reasons text[],
  UNIQUE (template_id, version, line_number),
  FOREIGN KEY (template_id, version) REFERENCES template_versions (template_id, version),
  FOREIGN KEY (practice_id, consumable_id) REFERENCES consumables (practice_id, id)
);

CREATE TABLE restorations (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  visit_id uuid NOT NULL,
  position integer NOT NULL CHECK (position > 0),
  tooth smallint NOT NULL,
  surfaces text NOT NULL,
  cavity_class text CHECK (cavity_class IN ('I', 'II', 'III', 'IV', 'V', 'VI')),
  reason text NOT NULL CHECK (reason IN ('decay', 'fracture', 'wear', 'cosmetic')),
  template_id uuid NOT NULL,
  template_version integer NOT NULL,
  shades uuid[] NOT NULL,
  attempts smallint NOT NULL CHECK (attempts BETWEEN 1 AND 10),
  cycles smallint NOT NULL CHECK (cycles BETWEEN 1 AND 10),
  volume_mm3 numeric(18,6) NOT NULL CHECK (volume_mm3 > 0),
  depth_mm numeric(18,6) NOT NULL CHECK (depth_mm > 0),
  minutes integer NOT NULL CHECK (minutes BETWEEN 0 AND 1440),
  own_cost numeric(20,6) NOT NULL CHECK (own_cost >= 0),
  shared_cost numeric(20,6) NOT NULL CHECK (shared_cost >= 0),
  retake_cost numeric(20,6) NOT NULL CHECK (retake_cost BETWEEN 0 AND own_cost + shared_cost),
  UNIQUE (practice_id, id),
  UNIQUE (visit_id, position),
  FOREIGN KEY (practice_id, visit_id) REFERENCES visits (practice_id, id),
  FOREIGN KEY (template_id, template_version) REFERENCES template_versions (template_id, version)
);

-- What a restoration cost, in whole cents, by category of consumable. Adds up to the restoration.
CREATE TABLE restoration_costs (
  practice_id uuid NOT NULL REFERENCES practices,
  restoration_id uuid NOT NULL,
  category text NOT NULL,
  cost numeric(20,6) NOT NULL CHECK (cost >= 0),
  PRIMARY KEY (restoration_id, category),
  FOREIGN KEY (practice_id, restoration_id) REFERENCES restorations (practice_id, id)
);

ALTER TABLE usage_lines ADD FOREIGN KEY (practice_id, restoration_id)
  REFERENCES restorations (practice_id, id);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['procedure_templates', 'template_versions', 'template_lines',
                           'restorations', 'restoration_costs'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE (name, active, latest_version) ON procedure_templates TO traybook_app;
GRANT UPDATE (own_cost, shared_cost, retake_cost) ON restorations TO traybook_app;
GRANT UPDATE (cost), DELETE ON restoration_costs TO traybook_app;
