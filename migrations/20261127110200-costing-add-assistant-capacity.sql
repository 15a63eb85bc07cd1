-- Minutes a year that the assistants together can really work, so that their idle time can be shown.
ALTER TABLE cost_rates
  ADD COLUMN assistant_practical_minutes integer CHECK (assistant_practical_minutes > 0),
  ADD CHECK (assistant_practical_minutes IS NULL OR assistant_rate IS NOT NULL);
