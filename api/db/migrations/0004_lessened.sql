ALTER TABLE `quotation_events` ADD `lessened` text;--> statement-breakpoint
ALTER TABLE `quotation_events` ADD `lessened_at` text;--> statement-breakpoint
ALTER TABLE `quotations` ADD `lessened` text;--> statement-breakpoint
ALTER TABLE `quotations` ADD `lessened_at` text;--> statement-breakpoint
ALTER TABLE `variations` ADD `lessened` text;--> statement-breakpoint
ALTER TABLE `variations` ADD `lessened_at` text;
--> statement-breakpoint
-- What was issued may be lessened, once each way: without the customer's data, or without anything that it said. All else of
-- a row stays as it is, and no row goes.
DROP TRIGGER `quotations_frozen`;
--> statement-breakpoint
CREATE TRIGGER `quotations_frozen` BEFORE UPDATE ON `quotations` WHEN
  NEW.`lessened` IS NULL OR NEW.`lessened_at` IS NULL OR OLD.`lessened` IS NEW.`lessened` OR OLD.`lessened` IS 'whole' OR
  NEW.`firm_id` IS NOT OLD.`firm_id` OR
  NEW.`job_id` IS NOT OLD.`job_id` OR
  NEW.`quotation_id` IS NOT OLD.`quotation_id` OR
  NEW.`revision` IS NOT OLD.`revision` OR
  NEW.`date` IS NOT OLD.`date` OR
  NEW.`issued_at` IS NOT OLD.`issued_at` OR
  NEW.`heading` IS NOT OLD.`heading` OR
  NEW.`valid_until` IS NOT OLD.`valid_until` OR
  NEW.`engine` IS NOT OLD.`engine` OR
  NEW.`edition` IS NOT OLD.`edition` OR
  NEW.`job_revision` IS NOT OLD.`job_revision` OR
  NEW.`job_tag` IS NOT OLD.`job_tag` OR
  NEW.`library_revision` IS NOT OLD.`library_revision` OR
  (NEW.`lessened` IS 'customer' AND (NEW.`offers` IS NOT OLD.`offers` OR NEW.`library_text` IS NOT OLD.`library_text`))
BEGIN SELECT RAISE(ABORT, 'an issued quotation does not change'); END;
--> statement-breakpoint
CREATE TRIGGER `quotations_kept` BEFORE DELETE ON `quotations` BEGIN SELECT RAISE(ABORT, 'an issued quotation does not change'); END;
--> statement-breakpoint
DROP TRIGGER `variations_frozen`;
--> statement-breakpoint
CREATE TRIGGER `variations_frozen` BEFORE UPDATE ON `variations` WHEN
  NEW.`lessened` IS NULL OR NEW.`lessened_at` IS NULL OR OLD.`lessened` IS NEW.`lessened` OR OLD.`lessened` IS 'whole' OR
  NEW.`firm_id` IS NOT OLD.`firm_id` OR
  NEW.`job_id` IS NOT OLD.`job_id` OR
  NEW.`quotation_id` IS NOT OLD.`quotation_id` OR
  NEW.`variation_id` IS NOT OLD.`variation_id` OR
  NEW.`number` IS NOT OLD.`number` OR
  NEW.`offered_at` IS NOT OLD.`offered_at` OR
  NEW.`before_pence` IS NOT OLD.`before_pence` OR
  NEW.`after_pence` IS NOT OLD.`after_pence` OR
  NEW.`parts` IS NOT OLD.`parts` OR
  NEW.`engine` IS NOT OLD.`engine` OR
  NEW.`before_job_revision` IS NOT OLD.`before_job_revision` OR
  NEW.`job_revision` IS NOT OLD.`job_revision` OR
  NEW.`job_tag` IS NOT OLD.`job_tag` OR
  (NEW.`lessened` IS 'whole' AND NEW.`job_text` IS NOT '')
BEGIN SELECT RAISE(ABORT, 'an offered variation does not change'); END;
--> statement-breakpoint
CREATE TRIGGER `variations_kept` BEFORE DELETE ON `variations` BEGIN SELECT RAISE(ABORT, 'an offered variation does not change'); END;
--> statement-breakpoint
DROP TRIGGER `quotation_events_frozen`;
--> statement-breakpoint
CREATE TRIGGER `quotation_events_frozen` BEFORE UPDATE ON `quotation_events` WHEN
  NEW.`lessened` IS NULL OR NEW.`lessened_at` IS NULL OR OLD.`lessened` IS NEW.`lessened` OR OLD.`lessened` IS 'whole' OR
  NEW.`firm_id` IS NOT OLD.`firm_id` OR
  NEW.`job_id` IS NOT OLD.`job_id` OR
  NEW.`quotation_id` IS NOT OLD.`quotation_id` OR
  NEW.`seq` IS NOT OLD.`seq` OR
  NEW.`at` IS NOT OLD.`at` OR
  (json_extract(NEW.`note`, '$.kind') IS NOT json_extract(OLD.`note`, '$.kind'))
BEGIN SELECT RAISE(ABORT, 'the history of a quotation does not change'); END;
--> statement-breakpoint
CREATE TRIGGER `quotation_events_kept` BEFORE DELETE ON `quotation_events` BEGIN SELECT RAISE(ABORT, 'the history of a quotation does not change'); END;
