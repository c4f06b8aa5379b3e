insert into jobs (firm_id, job_id, revision, saved_at, removed_at, reference, title, customer, wanted_points, schemes, tag) values
  ('own', 'tagged', 1, '2026-01-04T00:00:00.000Z', null, 'R-3', 'With a tag', 'C. Customer', 1, 1, '00000000000000aa');
insert into job_revisions (firm_id, job_id, revision, text, saved_at, how, chain_began, handed_out, kept_for, bytes, tag) values
  ('own', 'tagged', 1, '{"job":"tagged"}', '2026-01-04T00:00:00.000Z', 'by-hand', '2026-01-04T00:00:00.000Z', 0, null, 16, '00000000000000aa');
insert into libraries (firm_id, revision, text, saved_at, tag) values
  ('own', 3, '{"prices":"newest"}', '2026-01-04T00:00:00.000Z', '00000000000000bb');
