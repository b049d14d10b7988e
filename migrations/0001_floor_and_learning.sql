CREATE TABLE `learned` (
	`id` text PRIMARY KEY NOT NULL,
	`machineId` text NOT NULL,
	`key` text NOT NULL,
	`before` real NOT NULL,
	`after` real NOT NULL,
	`low` real NOT NULL,
	`high` real NOT NULL,
	`observations` integer NOT NULL,
	`at` integer NOT NULL,
	`revertedAt` integer,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE `line` ADD `makeUpFor` text;--> statement-breakpoint
ALTER TABLE `record` ADD `changeoverSeconds` integer;--> statement-breakpoint
ALTER TABLE `record` ADD `pauses` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'line' THEN json_set(`change`.`value`, '$.before.makeUpFor', NULL, '$.after.makeUpFor', NULL)
		WHEN 'record' THEN json_set(`change`.`value`, '$.before.changeoverSeconds', NULL, '$.before.pauses', json('[]'), '$.after.changeoverSeconds', NULL, '$.after.pauses', json('[]'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
