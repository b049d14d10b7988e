CREATE TABLE `delivery` (
	`id` text PRIMARY KEY NOT NULL,
	`sheetId` text NOT NULL,
	`pieces` integer NOT NULL,
	`due` integer NOT NULL,
	`note` text NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`sheetId`) REFERENCES `sheet`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
ALTER TABLE `settings` ADD `awaitMetal` integer DEFAULT true NOT NULL;--> statement-breakpoint
-- Both histories keep whole rows: they get the new field too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.awaitMetal', json('true'), '$.after.awaitMetal', json('true'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"settings"%';
--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.awaitMetal', json('true'), '$.after.awaitMetal', json('true'))
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"settings"%';
