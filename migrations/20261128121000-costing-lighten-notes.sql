-- What a posted visit adds to the report of costs is worked out in the trigger itself: a function of SQL
-- is planned anew at every call, which took longer than what it did.

CREATE OR REPLACE FUNCTION note_posted() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, width, restorations,
    visits, visits_of_template, visits_of_reason, visits_of_both, own_cost, shared_cost,
    retake_cost, costs)
  SELECT v.practice_id, v.visited_on, n.template_id, n.reason, v.dentist_id, f.width, 1,
         f.visits, f.visits_of_template, f.visits_of_reason, f.visits_of_both, f.own_cost,
         f.shared_cost, f.retake_cost, f.costs
  FROM changed n JOIN visits v ON v.id = n.visit_id AND v.reversed_at IS NULL
  CROSS JOIN LATERAL restoration_figures(n.visit_id, n.position, n.template_id, n.reason,
                                         n.own_cost, n.shared_cost, n.retake_cost) f;
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category, category_cost)
  SELECT v.practice_id, v.visited_on, n.template_id, n.reason, v.dentist_id, '',
         micros(v.material_cost)
  FROM changed n JOIN visits v ON v.id = n.visit_id AND v.reversed_at IS NULL
  WHERE NOT EXISTS (
    SELECT FROM restorations o WHERE o.visit_id = n.visit_id AND o.position < n.position);
  RETURN NULL;
END $$;
