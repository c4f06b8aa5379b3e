insert into variations (firm_id, job_id, quotation_id, variation_id, number, offered_at, reason, before_pence, after_pence,
  parts, photos, engine, before_job_revision, job_revision, job_tag, job_text, work) values
  ('own', 'tagged', 'q1', 'v3', 3, '2026-01-11T00:00:00.000Z', 'Another outlet', 14345, 15345,
   '[{"words":"An outlet","pence":1000}]', '["4355a46b19d348dc2f57c046f8ef63d4538ebb936000f3c9ee954a27460dd865"]', '0.1.0', 1, 1,
   '00000000000000aa', '{"job":"varied thrice"}', '{"before":["Two outlets"],"now":["Three outlets"]}');
insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note) values
  ('own', 'tagged', 'q1', 6, '2026-01-11T00:00:00.000Z', '{"kind":"variation-offered","variationId":"v3"}');
