CREATE TABLE `fileLayout` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`layout` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `otherName` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`text` text NOT NULL,
	`oursId` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE `line` ADD `due` integer;--> statement-breakpoint
ALTER TABLE `line` ADD `release` integer;--> statement-breakpoint
ALTER TABLE `line` ADD `importance` real;--> statement-breakpoint
ALTER TABLE `line` ADD `note` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `decimals` text DEFAULT 'point' NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `setUpDone` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
-- Both histories keep whole rows: they get the new fields too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`,
			'$.before.decimals', 'point', '$.before.setUpDone', json_array(),
			'$.after.decimals', 'point', '$.after.setUpDone', json_array())
		WHEN 'line' THEN json_set(`change`.`value`,
			'$.before.due', NULL, '$.before.release', NULL, '$.before.importance', NULL, '$.before.note', '',
			'$.after.due', NULL, '$.after.release', NULL, '$.after.importance', NULL, '$.after.note', '')
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"line"%' OR `changes` LIKE '%"kind":"settings"%';--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`,
			'$.before.decimals', 'point', '$.before.setUpDone', json_array(),
			'$.after.decimals', 'point', '$.after.setUpDone', json_array())
		WHEN 'line' THEN json_set(`change`.`value`,
			'$.before.due', NULL, '$.before.release', NULL, '$.before.importance', NULL, '$.before.note', '',
			'$.after.due', NULL, '$.after.release', NULL, '$.after.importance', NULL, '$.after.note', '')
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"line"%' OR `changes` LIKE '%"kind":"settings"%';
