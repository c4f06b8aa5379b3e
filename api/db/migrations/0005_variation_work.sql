ALTER TABLE `variations` ADD `work` text;
--> statement-breakpoint
-- What is done otherwise stays as it was written down, or goes with all else that names somebody.
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
  (NEW.`work` IS NOT NULL AND NEW.`work` IS NOT OLD.`work`) OR
  (NEW.`lessened` IS 'whole' AND NEW.`job_text` IS NOT '')
BEGIN SELECT RAISE(ABORT, 'an offered variation does not change'); END;
