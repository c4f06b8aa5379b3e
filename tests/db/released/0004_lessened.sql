insert into quotations (firm_id, job_id, quotation_id, revision, date, issued_at, heading, valid_until, offers, document,
  drawings, engine, edition, job_revision, job_tag, job_text, library_revision, library_text, lessened, lessened_at) values
  ('own', 'on', 'q1', 1, '2026-01-09', '2026-01-09T00:00:00.000Z', 'estimate', null, '[]', '', '', '0.1.0', 'BS 7671:2018+A3:2024',
   1, '0', '', 2, '', 'whole', '2026-01-10T00:00:00.000Z');
insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note, lessened, lessened_at) values
  ('own', 'on', 'q1', 1, '2026-01-09T00:00:00.000Z', '{"kind":"issued"}', null, null),
  ('own', 'on', 'q1', 2, '2026-01-09T12:00:00.000Z', '{"kind":"declined","on":"2026-01-09"}', 'whole', '2026-01-10T00:00:00.000Z');
insert into variations (firm_id, job_id, quotation_id, variation_id, number, offered_at, reason, before_pence, after_pence,
  parts, photos, engine, before_job_revision, job_revision, job_tag, job_text, lessened, lessened_at) values
  ('own', 'tagged', 'q1', 'v2', 2, '2026-01-09T00:00:00.000Z', '(erased)', 13345, 14345, '[]', '[]', '0.1.0', 1, 1,
   '00000000000000aa', '{"job":"varied again"}', 'customer', '2026-01-10T00:00:00.000Z');
insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note) values
  ('own', 'tagged', 'q1', 5, '2026-01-09T00:00:00.000Z', '{"kind":"variation-offered","variationId":"v2"}');
