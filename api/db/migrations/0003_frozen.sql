-- What was issued stays as it was issued: the database itself refuses to change it, whatever program asks.
CREATE TRIGGER `quotations_frozen` BEFORE UPDATE ON `quotations` BEGIN SELECT RAISE(ABORT, 'an issued quotation does not change'); END;
--> statement-breakpoint
CREATE TRIGGER `variations_frozen` BEFORE UPDATE ON `variations` BEGIN SELECT RAISE(ABORT, 'an offered variation does not change'); END;
--> statement-breakpoint
CREATE TRIGGER `quotation_events_frozen` BEFORE UPDATE ON `quotation_events` BEGIN SELECT RAISE(ABORT, 'the history of a quotation does not change'); END;
