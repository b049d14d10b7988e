CREATE TABLE `cutList` (
	`id` text PRIMARY KEY NOT NULL,
	`lines` text NOT NULL,
	`groups` text NOT NULL,
	`steps` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `movement` (
	`id` text PRIMARY KEY NOT NULL,
	`sheetId` text NOT NULL,
	`at` integer NOT NULL,
	`what` text NOT NULL,
	`pieces` integer NOT NULL,
	`after` integer NOT NULL,
	`note` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `movement_at` ON `movement` (`at`);--> statement-breakpoint
ALTER TABLE `sheet` ADD `form` text DEFAULT 'sheet' NOT NULL;--> statement-breakpoint
ALTER TABLE `sheet` ADD `trimMm` real DEFAULT 0 NOT NULL;--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'sheet' THEN json_set(`change`.`value`, '$.before.form', 'sheet', '$.before.trimMm', 0, '$.after.form', 'sheet', '$.after.trimMm', 0)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
