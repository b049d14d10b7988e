CREATE TABLE `__new_machine` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`stage` text NOT NULL,
	`maxLengthMm` real,
	`maxThicknessMm` real,
	`tonnes` real,
	`dieOpeningMm` real,
	`betweenFramesMm` real,
	`backGaugeMm` text,
	`minStripMm` real,
	`crew` integer NOT NULL,
	`calendarId` text NOT NULL,
	`changeover` text NOT NULL,
	`standards` text NOT NULL,
	`timesEdition` integer DEFAULT 1 NOT NULL,
	`state` text,
	`revision` integer NOT NULL,
	FOREIGN KEY (`calendarId`) REFERENCES `calendar`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_machine`("id", "name", "stage", "maxLengthMm", "maxThicknessMm", "tonnes", "dieOpeningMm", "betweenFramesMm", "backGaugeMm", "minStripMm", "crew", "calendarId", "changeover", "standards", "timesEdition", "state", "revision") SELECT "id", "name", "stage", "maxLengthMm", "maxThicknessMm", "tonnes", "dieOpeningMm", "betweenFramesMm", "backGaugeMm", "minStripMm", "crew", "calendarId", "changeover", "standards", "timesEdition", "state", "revision" FROM `machine`;--> statement-breakpoint
DROP TABLE `machine`;--> statement-breakpoint
ALTER TABLE `__new_machine` RENAME TO `machine`;--> statement-breakpoint
ALTER TABLE `part` ADD `steps` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
-- Both histories keep whole rows: they get the new field too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'part' THEN json_set(`change`.`value`, '$.before.steps', json('[]'), '$.after.steps', json('[]'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"part"%';--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'part' THEN json_set(`change`.`value`, '$.before.steps', json('[]'), '$.after.steps', json('[]'))
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"part"%';
