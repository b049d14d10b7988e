ALTER TABLE `line` ADD `lot` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `line` ADD `paint` text;--> statement-breakpoint
ALTER TABLE `line` ADD `film` text;--> statement-breakpoint
ALTER TABLE `line` ADD `mixLots` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `stockKnows` text;--> statement-breakpoint
ALTER TABLE `sheet` ADD `lot` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `sheet` ADD `paint` text;--> statement-breakpoint
ALTER TABLE `sheet` ADD `film` text;--> statement-breakpoint
-- Both histories keep whole rows: they get the new fields too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.stockKnows', NULL, '$.after.stockKnows', NULL)
		WHEN 'sheet' THEN json_set(`change`.`value`,
			'$.before.lot', '', '$.before.paint', NULL, '$.before.film', NULL,
			'$.after.lot', '', '$.after.paint', NULL, '$.after.film', NULL)
		WHEN 'line' THEN json_set(`change`.`value`,
			'$.before.lot', '', '$.before.paint', NULL, '$.before.film', NULL, '$.before.mixLots', json('false'),
			'$.after.lot', '', '$.after.paint', NULL, '$.after.film', NULL, '$.after.mixLots', json('false'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"sheet"%' OR `changes` LIKE '%"kind":"line"%' OR `changes` LIKE '%"kind":"settings"%';--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.stockKnows', NULL, '$.after.stockKnows', NULL)
		WHEN 'sheet' THEN json_set(`change`.`value`,
			'$.before.lot', '', '$.before.paint', NULL, '$.before.film', NULL,
			'$.after.lot', '', '$.after.paint', NULL, '$.after.film', NULL)
		WHEN 'line' THEN json_set(`change`.`value`,
			'$.before.lot', '', '$.before.paint', NULL, '$.before.film', NULL, '$.before.mixLots', json('false'),
			'$.after.lot', '', '$.after.paint', NULL, '$.after.film', NULL, '$.after.mixLots', json('false'))
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"sheet"%' OR `changes` LIKE '%"kind":"line"%' OR `changes` LIKE '%"kind":"settings"%';
