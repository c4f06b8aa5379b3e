insert into assets (firm_id, asset_id, media_type, bytes, content, kept_at) values
  ('own', '4355a46b19d348dc2f57c046f8ef63d4538ebb936000f3c9ee954a27460dd865', 'image/png', 1, x'31', '2026-01-05T00:00:00.000Z');
insert into quotations (firm_id, job_id, quotation_id, revision, date, issued_at, heading, valid_until, offers, document,
  drawings, engine, edition, job_revision, job_tag, job_text, library_revision, library_text) values
  ('own', 'tagged', 'q1', 1, '2026-01-05', '2026-01-05T00:00:00.000Z', 'quotation', '2026-02-05',
   '[{"schemeId":"s","name":"Spur","grossPence":12345}]', '{"document":1}', '{"drawings":1}', '0.1.0', 'BS 7671:2018+A3:2024',
   1, '00000000000000aa', '{"job":"tagged"}', 3, '{"prices":"newest"}');
insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note) values
  ('own', 'tagged', 'q1', 1, '2026-01-05T00:00:00.000Z', '{"kind":"issued"}'),
  ('own', 'tagged', 'q1', 2, '2026-01-06T00:00:00.000Z', '{"kind":"accepted","schemeId":"s","by":"C. Customer","how":"signed","on":"2026-01-06"}'),
  ('own', 'tagged', 'q1', 3, '2026-01-07T00:00:00.000Z', '{"kind":"variation-offered","variationId":"v1"}');
insert into variations (firm_id, job_id, quotation_id, variation_id, number, offered_at, reason, before_pence, after_pence,
  parts, photos, engine, before_job_revision, job_revision, job_tag, job_text) values
  ('own', 'tagged', 'q1', 'v1', 1, '2026-01-07T00:00:00.000Z', 'The wall is concrete', 12345, 13345,
   '[{"words":"Chasing concrete","pence":1000}]', '[]', '0.1.0', 1, 1, '00000000000000aa', '{"job":"varied"}');
