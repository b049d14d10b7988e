CREATE TABLE `tool` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`kind` text NOT NULL,
	`openingMm` real,
	`angleDeg` real,
	`radiusMm` real,
	`gooseneck` integer NOT NULL,
	`lengthMm` real NOT NULL,
	`ratingKnPerM` real,
	`machineIds` text NOT NULL,
	`note` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE `machine` ADD `betweenFramesMm` real;--> statement-breakpoint
ALTER TABLE `machine` ADD `timesEdition` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `remnants` text;--> statement-breakpoint
-- Both histories keep whole rows: they get the new fields too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.remnants', NULL, '$.after.remnants', NULL)
		WHEN 'machine' THEN json_set(`change`.`value`,
			'$.before.betweenFramesMm', NULL, '$.before.timesEdition', 1,
			'$.after.betweenFramesMm', NULL, '$.after.timesEdition', 1)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"machine"%' OR `changes` LIKE '%"kind":"settings"%';--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.remnants', NULL, '$.after.remnants', NULL)
		WHEN 'machine' THEN json_set(`change`.`value`,
			'$.before.betweenFramesMm', NULL, '$.before.timesEdition', 1,
			'$.after.betweenFramesMm', NULL, '$.after.timesEdition', 1)
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"machine"%' OR `changes` LIKE '%"kind":"settings"%';
