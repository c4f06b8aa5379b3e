-- Nothing new is stored: from here on the database refuses to change what was issued.
insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note) values
  ('own', 'tagged', 'q1', 4, '2026-01-08T00:00:00.000Z', '{"kind":"variation-agreed","variationId":"v1","by":"C. Customer","how":"message","on":"2026-01-08"}');
